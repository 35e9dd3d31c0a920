/**
 * The command line: one class per command, and the exit codes.
 */
@NullMarked
package io.github.firstoff.command;

import org.jspecify.annotations.NullMarked;
