import { z } from "zod";
import { studyJsonSchema } from "../study/format/schema.js";

/** The parts of the study's JSON Schema that the editor uses. */
export interface SchemaNode {
  readonly type?: string | readonly string[] | undefined;
  readonly properties?: Readonly<Record<string, SchemaNode>> | undefined;
  readonly required?: readonly string[] | undefined;
  readonly items?: SchemaNode | false | undefined;
  readonly prefixItems?: readonly SchemaNode[] | undefined;
  readonly anyOf?: readonly SchemaNode[] | undefined;
  readonly oneOf?: readonly SchemaNode[] | undefined;
  readonly enum?: readonly (string | number)[] | undefined;
  readonly const?: string | number | boolean | undefined;
  readonly format?: string | undefined;
  readonly maxLength?: number | undefined;
  readonly propertyNames?: SchemaNode | undefined;
  readonly default?: unknown;
  readonly description?: string | undefined;
  readonly dimension?: string | undefined;
  /** Type of text input: "id", "reference", "day-of-year". */
  readonly input?: string | undefined;
  readonly refersTo?: string | undefined;
  /** Labels of enum values that cannot be derived from them. */
  readonly titles?: Readonly<Record<string, string>> | undefined;
  /** Labels of enum values that studies may still have and no form offers. */
  readonly moved?: Readonly<Record<string, string>> | undefined;
  /** What the rows of a list stand for by position alone. */
  readonly rows?: "years" | undefined;
  /** Whether the answer moves with an optional field. */
  readonly moves?: boolean | undefined;
  /** In a group where one of several ways is taken: the way that a field belongs to. */
  readonly way?: string | undefined;
  /** Where to find the figure. */
  readonly where?: string | undefined;
  /** Ids of assumptions that are typical values of the field. */
  readonly typical?: readonly string[] | undefined;
  /** Those of each value of another field of the group; of other values none. */
  readonly typicalBy?: TypicalBy | undefined;
}

export interface TypicalBy {
  readonly field: string;
  readonly ids: Readonly<Record<string, readonly string[]>>;
}

const node: z.ZodType<SchemaNode> = z.lazy(() =>
  z.object({
    type: z.union([z.string(), z.array(z.string())]).optional(),
    properties: z.record(z.string(), node).optional(),
    required: z.array(z.string()).optional(),
    items: z.union([z.literal(false), node]).optional(),
    prefixItems: z.array(node).optional(),
    anyOf: z.array(node).optional(),
    oneOf: z.array(node).optional(),
    enum: z.array(z.union([z.string(), z.number()])).optional(),
    const: z.union([z.string(), z.number(), z.boolean()]).optional(),
    format: z.string().optional(),
    maxLength: z.number().optional(),
    propertyNames: node.optional(),
    default: z.unknown().optional(),
    description: z.string().optional(),
    dimension: z.string().optional(),
    input: z.string().optional(),
    refersTo: z.string().optional(),
    titles: z.record(z.string(), z.string()).optional(),
    moved: z.record(z.string(), z.string()).optional(),
    rows: z.literal("years").optional(),
    moves: z.boolean().optional(),
    way: z.string().optional(),
    where: z.string().optional(),
    typical: z.array(z.string()).optional(),
    typicalBy: z.object({ field: z.string(), ids: z.record(z.string(), z.array(z.string())) }).optional(),
  }),
);

/** The study's schema as data. */
export const studyNode = (): SchemaNode => node.parse(studyJsonSchema());
