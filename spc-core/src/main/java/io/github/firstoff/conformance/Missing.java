package io.github.firstoff.conformance;

import io.github.firstoff.remark.Remark;
import java.util.Optional;

/**
 * A piece that lacks a reading it should have.
 *
 * @param part its serial number
 * @param setting the setting at which it was not checked; empty where it was not checked at all
 */
public record Missing(String part, Optional<String> setting) {
    /** The piece and its setting in words. */
    public Remark remark() {
        return setting.map(at -> Remark.of("missing.at-setting", "{0} at {1}", part, at))
                .orElseGet(() -> Remark.verbatim(part));
    }
}
