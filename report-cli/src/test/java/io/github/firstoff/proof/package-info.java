/** Tests of what makes a sheet checkable: archives, carried files, signatures and their verification. */
@org.jspecify.annotations.NullMarked
package io.github.firstoff.proof;
