/** Benchmarks of the library, each beside the general-purpose program that does the same work. */
@NullMarked
package earthing.benchmark;

import org.jspecify.annotations.NullMarked;
