/** Tests of the three sheets, on blocks and on the sample files set in type. */
@NullMarked
package io.github.firstoff.report.kind;

import org.jspecify.annotations.NullMarked;
