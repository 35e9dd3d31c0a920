/**
 * Plain mathematics: mergeable tallies, distributions, control chart constants, estimators of a standard deviation.
 *
 * <p>Uses no other package of the library and knows no word of the trade beyond those of statistics. Start with
 * {@link io.github.firstoff.stats.DeviationTally} and {@link io.github.firstoff.stats.ChartConstants}.
 */
@NullMarked
package io.github.firstoff.stats;

import org.jspecify.annotations.NullMarked;
