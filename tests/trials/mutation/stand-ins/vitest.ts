import { chai, JestAsymmetricMatchers, JestChaiExpect, JestExtend } from "@vitest/expect";

export { beforeAll, describe, it, test } from "../collect.js";

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = Object.assign(
  (value: unknown, message?: string) => chai.expect(value, message),
  chai.expect,
);
