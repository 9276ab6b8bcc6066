/**
 * How long an earth fault lasts: time-current characteristics of relays and fuses, stages with breaker time and margin,
 * back-up, and the reclose sequence to lockout. Below pickup the answer is never, not a large number.
 */
@NullMarked
package earthing.fault.clearing;

import org.jspecify.annotations.NullMarked;
