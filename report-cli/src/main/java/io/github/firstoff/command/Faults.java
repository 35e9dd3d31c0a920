package io.github.firstoff.command;

import io.github.firstoff.intake.InputRefused;
import io.github.firstoff.proof.ProofRefused;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Turns what went wrong into messages and an exit code; no stack trace ever reaches a user. */
final class Faults {
    private Faults() {}

    /** Says what went wrong and returns the exit code for it. */
    static int report(Throwable fault, Console console) {
        if (fault instanceof InputRefused refused) {
            refused.lines().forEach(console::message);
            refused.rows().ifPresent(rows -> {
                console.message(rows.toString());
                console.message("Nothing was judged.");
            });
            return ExitCodes.INPUT;
        }
        if (fault instanceof ProofRefused) {
            console.message("firstoff: " + fault.getMessage());
            return ExitCodes.INPUT;
        }
        if (fault instanceof OutputFault) {
            console.message("firstoff: " + fault.getMessage());
            return ExitCodes.OUTPUT;
        }
        if (fault instanceof OutOfMemoryError) {
            console.message("firstoff: the memory that Java was given is too small for these inputs;"
                    + " set FIRSTOFF_JAVA_OPTIONS=-Xmx4g or more");
            return ExitCodes.OUTPUT;
        }
        // A fault of ours. One place is enough for a report; a page of frames helps no one at a machine.
        console.message("firstoff: this is a fault in the program, not in your files: "
                + fault.getClass().getSimpleName() + (fault.getMessage() == null ? "" : ": " + fault.getMessage())
                + place(fault));
        console.message("Nothing was written. Please report it with the line above and, if you may, the inputs.");
        return ExitCodes.OUTPUT;
    }

    /** Why a file operation failed, in words. */
    static String reason(IOException fault) {
        if (fault instanceof NoSuchFileException) {
            return "there is no such file or folder";
        }
        if (fault instanceof AccessDeniedException) {
            return "permission denied";
        }
        if (fault instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return fault.getMessage() == null ? fault.getClass().getSimpleName() : fault.getMessage();
    }

    private static String place(Throwable fault) {
        for (StackTraceElement frame : fault.getStackTrace()) {
            if (frame.getClassName().startsWith("io.github.firstoff")) {
                return " (" + frame.getFileName() + " line " + frame.getLineNumber() + ")";
            }
        }
        return "";
    }
}
