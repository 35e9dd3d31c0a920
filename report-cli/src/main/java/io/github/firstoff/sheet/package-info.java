/**
 * What a sheet says, before it is set in type: the verdicts, the studies and the job joined, and the JSON result.
 *
 * <p>Start with {@link io.github.firstoff.sheet.Sheet}. May use all of spc-core; knows nothing of blocks, pages or the command
 * line. The printed sheets and the JSON result are both made from these values, so they cannot disagree.
 */
@NullMarked
package io.github.firstoff.sheet;

import org.jspecify.annotations.NullMarked;
