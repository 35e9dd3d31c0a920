package io.github.firstoff.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhrasesTest {
    /** ISO 80000-1:2009, 7.3.1 (from memory): digits in groups of three, a small space apart, never a point or a comma. */
    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "1000, 1000",
        "9999, 9999",
        "10000, 10_000",
        "200000, 200_000",
        "1234567, 1_234_567",
        "-29000, -29_000"
    })
    void longCountsStandInGroupsOfThree(long count, String printed) {
        assertThat(Phrases.count(count)).isEqualTo(printed.replace('_', '\u202F'));
    }
}
