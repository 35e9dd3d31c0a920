/** Tests of the shape of the report packages. */
@NullMarked
package io.github.firstoff.report;

import org.jspecify.annotations.NullMarked;
