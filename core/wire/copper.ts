/** Electrical and mechanical properties of annealed copper and of wire PVC. */
export const copper = {
  /** IEC 60028 (from memory): resistivity at 20 C, 1.7241e-8 ohm m. */
  ohmMm2PerMetreAt20: 0.017241,
  /** IEC 60028 (from memory): constant-mass temperature coefficient at 20 C. */
  perKelvinAt20: 0.00393,
  /** Handbook value, from memory. */
  gramsPerCm3: 8.96,
  /** Handbook value, from memory; 117 GPa in N/mm2. */
  youngNPerMm2: 117_000,
  /** Handbook values for Manson's universal slopes, from memory. */
  strengthNPerMm2: 220,
  ductility: 1.9,
} as const;

export const pvc = {
  /** Handbook value, from memory. */
  gramsPerCm3: 1.35,
  /** Handbook value, from memory; about 50 MPa. */
  youngNPerMm2: 50,
} as const;
