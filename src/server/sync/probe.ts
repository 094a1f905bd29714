/** Moments at which a proof may stop the process, to show that nothing acknowledged is lost there. */
type ProbePoint =
  | 'appending'
  | 'appended'
  | 'applied'
  | 'acknowledged'
  | 'checkpointing'
  | 'checkpointed'
  | 'trimming'
  | 'trimmed';

export type Probe = (point: ProbePoint) => void;

export const noProbe: Probe = () => {};
