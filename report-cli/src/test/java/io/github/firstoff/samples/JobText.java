package io.github.firstoff.samples;

import java.time.LocalDate;

/** A job file of Hollin Quay Deck Gear for Marrow Bay Yachts. */
final class JobText {
    private final StringBuilder json = new StringBuilder();

    JobText(String job, String batch, int quantity, String order, LocalDate date) {
        json.append("""
                {
                  "schema": "firstoff-job-1",
                  "issuer": { "name": "Hollin Quay Deck Gear", "address": "2 Hollin Quay, Slipway Yard" },
                  "customer": { "name": "Marrow Bay Yachts", "address": "Boat Shed 4, Marrow Bay" },
                  "job": "%s", "batch": "%s", "quantity": %d, "order": "%s",
                  "inspector": { "name": "A. Quill", "position": "inspector" },
                  "date": "%s\"""".formatted(job, batch, quantity, order, date));
    }

    /** Names the part number, which is held against the plan's. */
    JobText part(String number) {
        json.append(",\n  \"part\": \"%s\"".formatted(number));
        return this;
    }

    JobText material(String grade, String heat, String certificate) {
        json.append(",\n  \"materials\": [ { \"grade\": \"%s\", \"heat\": \"%s\", \"certificate\": \"%s\" } ]"
                .formatted(grade, heat, certificate));
        return this;
    }

    JobText made(String machine, String program) {
        json.append(",\n  \"machine\": \"%s\", \"program\": \"%s\"".formatted(machine, program));
        return this;
    }

    JobText firstArticle(String kind, String reason) {
        json.append(",\n  \"firstArticle\": { \"kind\": \"%s\", \"reason\": \"%s\" }".formatted(kind, reason));
        return this;
    }

    JobText certificate(String number) {
        json.append(",\n  \"certificate\": { \"number\": \"%s\" }".formatted(number));
        return this;
    }

    String toJson() {
        return json + "\n}\n";
    }
}
