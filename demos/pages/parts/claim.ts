// A sentence that could be false, with what makes it true.

export interface Claim {
  readonly says: string;
  readonly holds: () => boolean;
}
