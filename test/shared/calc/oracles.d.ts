// The two libraries that tests compare with carry no types of their own: only what is used stands here.

declare module "jstat" {
  interface Distribution<Parameters extends number[]> {
    pdf(x: number, ...parameters: Parameters): number;
    cdf(x: number, ...parameters: Parameters): number;
    inv(p: number, ...parameters: Parameters): number;
  }
  const jstat: {
    readonly normal: Distribution<[mean: number, deviation: number]>;
    readonly studentt: Distribution<[degreesOfFreedom: number]>;
    readonly chisquare: Distribution<[degreesOfFreedom: number]>;
    readonly beta: Distribution<[alpha: number, beta: number]>;
    readonly centralF: Distribution<[above: number, below: number]>;
  };
  export default jstat;
}

declare module "psychrolib" {
  const psychrolib: {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetHumRatioFromRelHum(celsius: number, humidity: number, pressure: number): number;
    GetMoistAirDensity(celsius: number, humidityRatio: number, pressure: number): number;
    GetSatVapPres(celsius: number): number;
    GetTDewPointFromRelHum(celsius: number, humidity: number): number;
    GetTWetBulbFromRelHum(celsius: number, humidity: number, pressure: number): number;
    GetStandardAtmPressure(altitude: number): number;
  };
  export default psychrolib;
}
