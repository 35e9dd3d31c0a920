package io.github.firstoff.command;

/** What the program says to the shell when it ends. */
public final class ExitCodes {
    /** Done, and accepted. */
    public static final int ACCEPTED = 0;
    /** Done, and not accepted: nonconforming, inconclusive or incomplete. */
    public static final int NOT_ACCEPTED = 1;
    /** The command line is wrong. */
    public static final int USAGE = 2;
    /** An input is unreadable or contradicts itself; no sheet was written. */
    public static final int INPUT = 3;
    /** The result could not be written or stored; what was there before is untouched. */
    public static final int OUTPUT = 4;

    private ExitCodes() {}
}
