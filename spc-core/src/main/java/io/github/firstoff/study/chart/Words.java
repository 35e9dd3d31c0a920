package io.github.firstoff.study.chart;

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

    static String number(int n) {
        return n >= 0 && n < SMALL.length ? SMALL[n] : Integer.toString(n);
    }

    /** 1 reading, 2 readings. */
    static String count(long n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }
}
