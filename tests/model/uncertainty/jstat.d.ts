/** What the tests use of jstat, which brings no types. */
declare module "jstat" {
  export const jStat: {
    beta: { inv(p: number, alpha: number, beta: number): number };
    normal: {
      inv(p: number, mean: number, deviation: number): number;
      cdf(x: number, mean: number, deviation: number): number;
    };
    lognormal: {
      inv(p: number, mu: number, sigma: number): number;
      mean(mu: number, sigma: number): number;
      variance(mu: number, sigma: number): number;
    };
    triangular: {
      cdf(x: number, low: number, high: number, mode: number): number;
      variance(low: number, high: number, mode: number): number;
    };
    binomial: { cdf(k: number, n: number, p: number): number };
    quantiles(values: readonly number[], shares: readonly number[], alphap: number, betap: number): number[];
    spearmancoeff(first: readonly number[], second: readonly number[]): number;
    corrcoeff(first: readonly number[], second: readonly number[]): number;
  };
}
