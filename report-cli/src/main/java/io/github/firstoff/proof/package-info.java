/**
 * What makes a finished sheet checkable without us: the files it carries, its signatures, and their verification.
 *
 * <p>Start with {@link io.github.firstoff.proof.SheetFile} to read a sheet back and {@link io.github.firstoff.proof.Signer} to sign one.
 * The only package that uses PDFBox and Bouncy Castle. May use the sheet's values and the renderer; knows nothing of the command
 * line, and never asks what time it is.
 */
@NullMarked
package io.github.firstoff.proof;

import org.jspecify.annotations.NullMarked;
