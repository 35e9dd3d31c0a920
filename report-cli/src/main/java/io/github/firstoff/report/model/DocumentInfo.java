package io.github.firstoff.report.model;

import java.time.Instant;
import java.util.Locale;

/**
 * What the file says about itself, beside what is printed.
 *
 * @param title    title shown by viewers
 * @param author   who issues the sheet (the shop), or empty
 * @param subject  one line of description, or empty
 * @param language language of the text, for readers aloud and for archives
 * @param created  the moment the sheet was made; passed in, because no sheet reads a clock. Printed nowhere by itself.
 */
public record DocumentInfo(String title, String author, String subject, Locale language, Instant created) {}
