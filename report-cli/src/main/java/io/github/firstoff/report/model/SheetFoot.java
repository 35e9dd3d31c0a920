package io.github.firstoff.report.model;

/**
 * What a reader needs to find the way back from the paper to the data; printed at the foot of every page beside "page x of y".
 *
 * @param decisionRule   the rule used to decide, in words
 * @param programVersion program name and version
 * @param dataHash       the first twelve characters of the hash of the data, or empty when there is none
 */
public record SheetFoot(String decisionRule, String programVersion, String dataHash) {
    /** Refuses a hash that is neither empty nor twelve characters long: a shortened one would not be comparable. */
    public SheetFoot {
        if (!dataHash.isEmpty() && dataHash.length() != 12) {
            throw new IllegalArgumentException("the data hash at the foot has 12 characters, not " + dataHash.length());
        }
    }
}
