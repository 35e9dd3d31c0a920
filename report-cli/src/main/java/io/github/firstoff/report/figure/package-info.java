/**
 * What a picture shows, as plain values: points, lines, bins and curves. No drawing, no colour, no library.
 *
 * <p>Values are doubles, because a picture is statistics and not a verdict; everything that is printed as a figure comes as
 * text beside them. Uses the JDK only. Start at {@link io.github.firstoff.report.figure.ControlFigure}.
 */
@NullMarked
package io.github.firstoff.report.figure;

import org.jspecify.annotations.NullMarked;
