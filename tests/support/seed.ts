export const SEED = 20261125
