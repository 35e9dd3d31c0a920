package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WholeLinesTest {
    private static final String WHOLE = "part;2\nS001;12,51\nS\u010A02;12,49\n";

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE"})
    void whatStandsBehindTheLastLineEnd_isNotYetWritten(String name) {
        Charset charset = Charset.forName(name);
        int whole = WHOLE.getBytes(charset).length;
        byte[] more = (WHOLE + "S003;12,5").getBytes(charset);
        assertThat(WholeLines.length(more)).isEqualTo(whole);
        byte[] cut = java.util.Arrays.copyOf(more, more.length - 1);
        assertThat(WholeLines.length(cut)).isEqualTo(whole);
        assertThat(WholeLines.length(WHOLE.getBytes(charset))).isEqualTo(whole);
    }

    @Test
    void jsonLinesAreLines_aDocumentIsNone() {
        String lines = "{\"part\":\"S001\",\"2\":12.5}\n{\"part\":\"S002\",\"2\":12.5}\n";
        assertThat(WholeLines.length((lines + "{\"pa").getBytes(StandardCharsets.UTF_8)))
                .isEqualTo(lines.length());
        byte[] document = "[\n{\"part\":\"S001\",\n\"2\":12.5}]".getBytes(StandardCharsets.UTF_8);
        assertThat(WholeLines.length(document)).isEqualTo(document.length);
    }

    @Test
    void aWorkbookIsTakenWhole() {
        byte[] zip = {'P', 'K', 3, 4, '\n', 1, 2, 3};
        assertThat(WholeLines.length(zip)).isEqualTo(zip.length);
        assertThat(WholeLines.length(new byte[0])).isZero();
    }
}
