/**
 * Longest wait for anything, in milliseconds: it bounds a hang and measures nothing. Below the limit of a test, so that
 * what was waited for is told.
 */
export const patience = 300_000;
