// The little of jstat that is used here; the package brings no types.
declare module 'jstat' {
  const jstat: {
    readonly normal: {
      cdf(x: number, mean: number, standardDeviation: number): number
      inv(probability: number, mean: number, standardDeviation: number): number
    }
    readonly studentt: { inv(probability: number, degreesOfFreedom: number): number }
  }
  export default jstat
}
