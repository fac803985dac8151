import { parseArgs } from "node:util";
import { Stryker } from "@stryker-mutator/core";

const { values } = parseArgs({
  options: {
    files: { type: "string", default: "**/*.ts" },
    "one-in": { type: "string", default: "1" },
  },
});

const oneIn = Number(values["one-in"]);
/** What only a sample met is not to be taken for the whole by the next run. */
const asSample = oneIn === 1 ? {} : { checkers: ["sample"], incremental: false, sample: { oneIn } };

await new Stryker({
  configFile: ".stryker.config.json",
  mutate: values.files.split(",").map((files) => `src/model/${files}`),
  ...asSample,
}).runMutationTest();
