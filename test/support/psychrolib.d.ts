/** What we use of psychrolib, which comes without types. Celsius, pascal, kilograms of water per kilogram of dry air. */
declare module 'psychrolib' {
  interface Psychrometrics {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(dryBulb_C: number): number;
    GetVapPresFromRelHum(dryBulb_C: number, relativeHumidity: number): number;
    GetHumRatioFromRelHum(dryBulb_C: number, relativeHumidity: number, pressure_Pa: number): number;
    GetHumRatioFromVapPres(vapour_Pa: number, pressure_Pa: number): number;
    GetMoistAirDensity(dryBulb_C: number, humidityRatio: number, pressure_Pa: number): number;
    GetDryAirDensity(dryBulb_C: number, pressure_Pa: number): number;
    GetStandardAtmPressure(altitude_m: number): number;
    GetStandardAtmTemperature(altitude_m: number): number;
  }
  const psychrolib: Psychrometrics;
  export default psychrolib;
}
