package io.github.firstoff.samples;

import java.util.Optional;

/**
 * One characteristic of a sample plan, and the machining that makes its readings.
 *
 * @param number balloon number
 * @param feature what it is about
 * @param requirement as the drawing writes it
 * @param importance the class; empty for a dimension that is never judged
 * @param gauge the gauge's number; empty for what is checked by eye
 * @param more further fields of the plan file, as JSON with a leading comma, or nothing
 * @param inspected how many pieces of a batch are inspected for it
 * @param machining what makes the readings; empty for a check that passes or fails, or is never read
 */
record Checked(
        String number,
        String feature,
        String requirement,
        Optional<String> importance,
        Optional<String> gauge,
        String more,
        Inspected inspected,
        Optional<Machining> machining) {

    /** Which pieces of a batch carry a reading; a first article carries all but those never read. */
    enum Inspected {
        EVERY_PIECE,
        SAMPLE,
        FIRST_ARTICLE_ONLY,
        NEVER
    }

    String toJson() {
        StringBuilder json = new StringBuilder();
        json.append("{ \"number\": \"")
                .append(number)
                .append("\", \"feature\": \"")
                .append(feature);
        json.append("\", \"requirement\": \"").append(requirement).append('"');
        importance.ifPresent(word -> json.append(", \"class\": \"").append(word).append('"'));
        gauge.ifPresent(id -> json.append(", \"gauge\": \"").append(id).append('"'));
        if (inspected == Inspected.SAMPLE) {
            json.append(", \"inspect\": \"sample\"");
        }
        return json.append(more).append(" }").toString();
    }
}
