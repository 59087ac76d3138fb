/** A place on the plan view: x rearward, y to the right, in millimetres. */
export interface PlanPoint {
  readonly xMm: number;
  readonly yMm: number;
}

/** A place in the car: the plan view plus height above the floor. */
export interface BodyPoint extends PlanPoint {
  readonly zMm: number;
}
