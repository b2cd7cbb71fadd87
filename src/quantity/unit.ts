/** Every unit a number may carry in a file, on a page or in between. */
export type Unit =
  | '% of body weight'
  | '% of body mass'
  | '% of 1RM'
  | '%'
  | 'cm'
  | 'm'
  | 'm/s'
  | 'kg'
  | 'N'
  | 'N/kg'
  | 'N·m/kg'
  | 'J/kg'
  | 'deg'
  | 's'
  | 'reps'
  | 'weeks'
  | 'sessions'
  | '× body weight'
  | 'ratio'

/** Standard gravity. Units m/s². Source 3rd CGPM 1901, exact by definition. */
export const STANDARD_GRAVITY = 9.80665

/** Units deg in, radians out. */
export const radians = (angle_deg: number): number => (angle_deg * Math.PI) / 180

/** Units radians in, deg out. */
export const degrees = (angle: number): number => (angle * 180) / Math.PI
