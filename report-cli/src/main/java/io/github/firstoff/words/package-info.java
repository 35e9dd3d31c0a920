/**
 * The words of sheets, apart from the program: one file of labels and sentences per language, and the class that fills them in
 * ({@link io.github.firstoff.words.Labels}, where to start). A translation is one file {@code labels_xx.properties} beside
 * {@code labels.properties}; see {@code docs/house.md}.
 *
 * <p>Uses {@code remark} and the JDK only; everything that words a sheet may use it. JSON results, messages and the terminal speak English whatever a sheet speaks.
 */
@NullMarked
package io.github.firstoff.words;

import org.jspecify.annotations.NullMarked;
