/**
 * The files of {@code sample-measurements/}: invented parts of an invented firm, with readings that a seeded process makes.
 *
 * <p>{@link io.github.firstoff.samples.SampleGenerator} writes every file; the tests beside it hold the committed files against
 * what it writes, and against what the folder's README says of them. Start with
 * {@link io.github.firstoff.samples.SampleGenerator}. The generator uses nothing of firstoff itself, so that a fault there cannot hide here; the tests do.
 */
@NullMarked
package io.github.firstoff.samples;

import org.jspecify.annotations.NullMarked;
