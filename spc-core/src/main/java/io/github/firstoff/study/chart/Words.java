package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;

/** Numbers as words, for sentences. */
final class Words {
    private static final String[] SMALL = {
        "no",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
        "twenty"
    };

    private Words() {}

    static Remark number(int n) {
        return n >= 0 && n < SMALL.length ? Remark.word("number", SMALL[n]) : Remark.verbatim(Integer.toString(n));
    }
}
