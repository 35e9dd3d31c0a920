package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressTest {
    private final List<String> written = new ArrayList<>();
    private final AtomicLong clock = new AtomicLong();

    private Progress progress(boolean terminal) {
        return new Progress(written::add, terminal, clock::get);
    }

    private void passMillis(long millis) {
        clock.addAndGet(millis * 1_000_000);
    }

    @Test
    void shortWorkShowsNothing() {
        Progress progress = progress(true);
        passMillis(600);
        progress.at("characteristic", 1, 2);
        progress.end();
        assertThat(written).isEmpty();
    }

    @Test
    void longWorkRenewsOneLineAndTakesItAway() {
        Progress progress = progress(true);
        passMillis(800);
        progress.at("characteristic", 1, 200);
        passMillis(50);
        progress.at("characteristic", 2, 200);
        passMillis(150);
        progress.at("characteristic", 3, 200);
        progress.end();
        progress.end();
        assertThat(written)
                .containsExactly(
                        "\r\u001B[Kcharacteristic 1 of 200", "\r\u001B[Kcharacteristic 3 of 200", "\r\u001B[K");
    }

    @Test
    void withoutATerminalNothingIsWritten() {
        Progress progress = progress(false);
        passMillis(5000);
        progress.at("characteristic", 1, 200);
        progress.end();
        assertThat(written).isEmpty();
    }
}
