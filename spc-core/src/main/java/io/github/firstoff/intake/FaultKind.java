package io.github.firstoff.intake;

/** What can be wrong with an input. Faults of one kind at one place of a file are reported together. */
public enum FaultKind {
    /** The file is not there, is a directory, or cannot be read. */
    UNREADABLE_FILE,
    /** The file is larger than such a file can sensibly be. */
    TOO_LARGE,
    /** The file has nothing in it, or a heading and nothing under it. */
    EMPTY,
    /** The file is of another kind: a workbook, a picture, text in another encoding. */
    WRONG_FORMAT,
    /** A byte or character that text does not hold: invalid UTF-8, NUL, control characters. */
    UNREADABLE_TEXT,
    /** The text is no JSON, or no CSV. */
    SYNTAX,
    /** The schema's name is not the one that this file should have. */
    WRONG_SCHEMA,
    /** A key or a column that must be there is not. */
    MISSING,
    /** A key or a column that is nearly one that is understood. */
    MISSPELT,
    /** A key or a column that stands twice. */
    DOUBLED_NAME,
    /** Text where a number belongs, a list where text belongs, and so on. */
    WRONG_TYPE,
    /** Something that is no number. */
    NOT_A_NUMBER,
    /** A number written so that it could mean two things. */
    AMBIGUOUS_NUMBER,
    /** A number that is possible but not here: too large, too long, negative where it cannot be. */
    NUMBER_OUT_OF_RANGE,
    /** A word that is not one of those that are understood here. */
    UNKNOWN_WORD,
    /** Something that is no date or no time. */
    NOT_A_DATE,
    /** Times of two kinds, or times on some rows only. */
    UNEVEN_TIMES,
    /** A requirement that cannot be read or has no limits. */
    REQUIREMENT,
    /** Two statements that cannot both hold. */
    CONTRADICTION,
    /** A row with more or fewer fields than the heading. */
    WRONG_FIELD_COUNT,
    /** Nothing where something must stand. */
    BLANK,
    /** A value for an attribute, or pass or fail for a value. */
    WRONG_READING,
    /** A characteristic that the plan does not have. */
    UNKNOWN_CHARACTERISTIC,
    /** A setting that the plan does not list for the characteristic, or none where it lists some. */
    UNKNOWN_SETTING,
    /** A reference to something that is not there. */
    UNKNOWN_REFERENCE,
    /** A gauge that the plan does not list. */
    UNKNOWN_GAUGE,
    /** A unit that is not understood, or that measures something else. */
    WRONG_UNIT,
    /** A second reading of what may be read only once. */
    DUPLICATE_READING,
    /** Readings of another part, revision or hand than the plan's. */
    OTHER_PART
}
