package io.github.firstoff.report.model;

import java.util.Objects;

/** A file that a sheet carries inside: an input it was made from, or its result in figures. */
public final class Attachment {
    /** What the file is to the sheet (ISO 32000-2, 7.11.3, AFRelationship). */
    public enum Relationship {
        /** The sheet was made from it. */
        SOURCE("Source"),
        /** The figures that the sheet shows as tables and pictures. */
        DATA("Data"),
        /** What helps to read the other files. */
        SUPPLEMENT("Supplement");

        private final String word;

        Relationship(String word) {
            this.word = word;
        }

        /** The name in the file. */
        public String word() {
            return word;
        }
    }

    private final String name;
    private final String mediaType;
    private final String description;
    private final Relationship relationship;
    private final byte[] bytes;

    /**
     * A file to carry.
     *
     * @param name its name, the only one of that name on the sheet
     * @param mediaType its media type (RFC 6838), such as {@code text/csv}
     * @param description what it is, in a few words for the list of attachments
     * @param relationship what it is to the sheet
     * @param bytes its bytes; copied
     */
    public Attachment(String name, String mediaType, String description, Relationship relationship, byte[] bytes) {
        if (name.isBlank()) {
            throw new IllegalArgumentException("an attachment has a name");
        }
        this.name = name;
        this.mediaType = mediaType;
        this.description = description;
        this.relationship = Objects.requireNonNull(relationship);
        this.bytes = bytes.clone();
    }

    /** Its name. */
    public String name() {
        return name;
    }

    /** Its media type. */
    public String mediaType() {
        return mediaType;
    }

    /** What it is, in a few words. */
    public String description() {
        return description;
    }

    /** What it is to the sheet. */
    public Relationship relationship() {
        return relationship;
    }

    /** Its bytes, a copy. */
    public byte[] bytes() {
        return bytes.clone();
    }
}
