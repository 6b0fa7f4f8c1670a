declare module "astronomia/planetposition" {
  export class Planet {
    constructor(series: object)
    position2000(julianDate: number): { readonly lon: number; readonly lat: number; readonly range: number }
  }
}
declare module "astronomia/data/*" {
  const series: object
  export default series
}
