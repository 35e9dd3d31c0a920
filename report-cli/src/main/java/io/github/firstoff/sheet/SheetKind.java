package io.github.firstoff.sheet;

/** The kinds of sheet. */
public enum SheetKind {
    /** A first article, signed off characteristic by characteristic. */
    FIRST_ARTICLE("first-article", "First article inspection"),
    /** A batch under control charts. */
    BATCH("batch", "Batch report"),
    /** The supplier's declaration of conformity to the customer. */
    CERTIFICATE("certificate", "Certificate of conformity"),
    /** How characteristics drift; its studies are not those of the plan and stand in {@link DriftSheet}. */
    DRIFT("drift", "Drift study");

    private final String command;
    private final String title;

    SheetKind(String command, String title) {
        this.command = command;
        this.title = title;
    }

    /** The command that makes it, and its name in JSON results. */
    public String command() {
        return command;
    }

    /** What stands in the head of the page. */
    public String title() {
        return title;
    }

    /** Whether the plan's studies are worked out: a first article is too few pieces for any, a study of drift has its own. */
    public boolean hasStudies() {
        return this == BATCH || this == CERTIFICATE;
    }
}
