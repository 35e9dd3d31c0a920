/** The languages of sheets held against one another and against the program. */
@org.jspecify.annotations.NullMarked
package io.github.firstoff.words;
