/** Pages as a person sees them, held against pages that a person looked at and approved. */
@NullMarked
package io.github.firstoff.approval;

import org.jspecify.annotations.NullMarked;
