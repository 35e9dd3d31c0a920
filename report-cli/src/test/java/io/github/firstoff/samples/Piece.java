package io.github.firstoff.samples;

import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.Map;

/** One piece of a sample file with its readings, by balloon number in the plan's order. */
final class Piece {
    private final String serial;
    private final LocalDateTime time;
    private final String operator;
    private final Map<String, String> readings = new LinkedHashMap<>();
    private String note = "";

    Piece(String serial, LocalDateTime time, String operator) {
        this.serial = serial;
        this.time = time;
        this.operator = operator;
    }

    String serial() {
        return serial;
    }

    LocalDateTime time() {
        return time;
    }

    String operator() {
        return operator;
    }

    Map<String, String> readings() {
        return readings;
    }

    String note() {
        return note;
    }

    /** Puts a reading, or replaces the one that the process gave. */
    Piece with(String number, String value) {
        readings.put(number, value);
        return this;
    }

    /** Takes a reading away, as if it had been forgotten. */
    Piece without(String number) {
        readings.remove(number);
        return this;
    }

    Piece noted(String remark) {
        note = remark;
        return this;
    }
}
