import { type Checker, CheckStatus } from "@stryker-mutator/api/check";
import type { Mutant } from "@stryker-mutator/api/core";
import { commonTokens, declareClassPlugin, PluginKind, tokens } from "@stryker-mutator/api/plugin";

const told = { status: CheckStatus.Passed } as const;
/** Such mutants count neither as found nor as surviving, nor do they among those that meet no test. */
const left = { status: CheckStatus.CompileError, reason: "It is not in the sample." } as const;

/** Lets every nth mutant through, by its number. */
export class Sample implements Checker {
  static inject = tokens(commonTokens.options);
  private readonly oneIn: number;

  constructor(options: Readonly<Record<string, unknown>>) {
    this.oneIn = (options.sample as { readonly oneIn: number }).oneIn;
  }

  async init() {}

  async group(mutants: Mutant[]) {
    return [mutants.map(({ id }) => id)];
  }

  async check(mutants: Mutant[]) {
    return Object.fromEntries(mutants.map(({ id }) => [id, Number(id) % this.oneIn === 0 ? told : left]));
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.Checker, "sample", Sample)];

export const strykerValidationSchema = {
  properties: {
    sample: {
      type: "object",
      properties: { oneIn: { type: "integer", minimum: 1 } },
      required: ["oneIn"],
    },
  },
};
