package io.github.firstoff.proof;

import java.util.Locale;
import java.util.Optional;

/**
 * One file that a sheet was made from.
 *
 * @param role what it was read as
 * @param name its own name, without its folder
 * @param size how many bytes it has
 * @param sha256 the SHA-256 (FIPS 180-4) of its bytes in hexadecimal
 * @param attachment under which name the sheet carries it; empty where it is too large to be carried
 */
public record CarriedFile(Role role, String name, long size, String sha256, Optional<String> attachment) {
    /** What a file was read as. */
    public enum Role {
        /** What the drawing requires. */
        PLAN("plan", "Plan: what the drawing requires"),
        /** The plan that the plan is the mirror image of. */
        COUNTERPART("plan-counterpart", "Plan of the counterpart, of which the plan is the mirror image"),
        /** Order, batch, material and people. */
        JOB("job", "Job: order, batch, material and people"),
        /** How the firm's sheets look. */
        HOUSE("house", "House: whose sheet it is and how it looks"),
        /** The firm's mark. */
        LOGO("house-logo", "Logo of the house"),
        /** How the lines of readings are understood. */
        MAPPING("mapping", "Mapping: how the lines of the readings are understood"),
        /** What was measured. */
        READINGS("readings", "Readings as they were read"),
        /** A joint of two parts. */
        ASSEMBLY("assembly", "Assembly: the joint, its parts and temperatures"),
        /** Measured bores of the outer part of a joint. */
        BORES("readings-bores", "Readings of the bores as they were read"),
        /** Measured sizes of what goes into the bores. */
        RINGS("readings-rings", "Readings of what goes in as they were read"),
        /** The members of a dimension loop. */
        STACK("stack", "Members of the dimension loop");

        private final String beginning;
        private final String description;

        Role(String beginning, String description) {
            this.beginning = beginning;
            this.description = description;
        }

        /** With what the names of such attachments begin. */
        public String beginning() {
            return beginning;
        }

        /** What it is, in a few words. */
        public String description() {
            return description;
        }
    }

    /**
     * The name under which a sheet carries a file: the role's word, for readings their place among the files, and the file's own name in
     * letters that every reader of PDF files can show. Further files of any other role have their place too.
     *
     * @param place counted from 1 among the files of that role
     */
    public static String attachmentName(Role role, int place, String name) {
        String safe = name.replaceAll("[^A-Za-z0-9._-]", "_");
        return role == Role.READINGS || place > 1
                ? String.format(Locale.ROOT, "%s-%02d-%s", role.beginning(), place, safe)
                : role.beginning() + "-" + safe;
    }
}
