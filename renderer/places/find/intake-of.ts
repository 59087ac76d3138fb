import type { Intake, Job } from '#core/job/job-document.ts';

/** The part of a job that is written down when the car comes in. */
export function intakeOf(job: Job): Intake {
  const { vehicle, complaint, failureType, circuitId, alsoFailingCircuitIds, workingCircuitIds } = job;
  const { recentWork, symptoms } = job;
  return {
    vehicle,
    complaint,
    failureType,
    circuitId,
    alsoFailingCircuitIds,
    workingCircuitIds,
    ...(recentWork ? { recentWork } : {}),
    ...(symptoms ? { symptoms } : {}),
  };
}
