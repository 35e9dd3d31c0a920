/** Tests of what all studies share. */
@org.jspecify.annotations.NullMarked
package io.github.firstoff.study;
