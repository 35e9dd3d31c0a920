/** Tests of pictures as plain values. */
@NullMarked
package io.github.firstoff.report.figure;

import org.jspecify.annotations.NullMarked;
