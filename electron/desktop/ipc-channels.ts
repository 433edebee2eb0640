/** The two names that cross between page and shell. */
export const CALL = 'fairhand:call';
export const EVENT = 'fairhand:event';
