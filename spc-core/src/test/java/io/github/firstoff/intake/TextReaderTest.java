package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextReaderTest {

    /** A stream that hands on one byte at a time, as a terminal or a pipe may. */
    private static final class Drip extends InputStream {
        private final InputStream bytes;

        Drip(byte[] bytes) {
            this.bytes = new ByteArrayInputStream(bytes);
        }

        @Override
        public int read() throws IOException {
            return bytes.read();
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            return bytes.read(buffer, offset, Math.min(1, length));
        }
    }

    private static String readAll(InputStream stream, int step) throws TextRefused {
        StringBuilder text = new StringBuilder();
        try (InputBytes bytes = new InputBytes(Input.stream("t", stream), Long.MAX_VALUE)) {
            TextReader reader = TextReader.utf8(bytes);
            char[] buffer = new char[step];
            int count = reader.read(buffer, 0, step);
            while (count >= 0) {
                text.append(buffer, 0, count);
                count = reader.read(buffer, 0, step);
            }
        }
        return text.toString();
    }

    private static Fault refusal(byte[] bytes) {
        return catchThrowableOfType(TextRefused.class, () -> readAll(new ByteArrayInputStream(bytes), 100))
                .fault();
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 8192})
    void everyCharacter_whateverTheStepAndHoweverTheBytesArrive(int step) throws TextRefused {
        String text = "Ø52 µm – ⌖ 𝕏\r\n" + "𝕏".repeat(40_000) + "end";

        assertThat(readAll(new ByteArrayInputStream(utf8(text)), step)).isEqualTo(text);
        assertThat(readAll(new Drip(utf8("\uFEFF" + "Ø𝕏")), step)).isEqualTo("Ø𝕏");
        assertThat(readAll(new Drip(utf8("\uFEFF")), step)).isEmpty();
        assertThat(readAll(new Drip(new byte[0]), step)).isEmpty();
    }

    @Test
    void aByteThatIsNoUtf8_isNamedWithItsPlace() {
        byte[] bytes = "part,2\r\nS1,µ".getBytes(StandardCharsets.ISO_8859_1);

        Fault fault = refusal(bytes);

        assertThat(fault.line())
                .isEqualTo("t:2:4: found the byte 0xB5, which is no UTF-8 here; "
                        + "expected text in UTF-8; save the file with that encoding");
    }

    @Test
    void aCharacterCutOffAtTheEnd_isNoUtf8() {
        byte[] whole = utf8("a𝕏");

        assertThat(refusal(java.util.Arrays.copyOf(whole, 3)).kind()).isEqualTo(FaultKind.UNREADABLE_TEXT);
    }

    @Test
    void whatStandsBeforeAFault_isHandedOnFirst() throws TextRefused {
        byte[] bytes = {'a', 'b', (byte) 0xFF, 'c'};
        try (InputBytes stream = new InputBytes(Input.stream("t", new ByteArrayInputStream(bytes)), 100)) {
            TextReader reader = TextReader.utf8(stream);
            char[] buffer = new char[10];
            assertThat(reader.read(buffer, 0, 10)).isEqualTo(2);
            assertThat(catchThrowableOfType(TextRefused.class, () -> reader.read(buffer, 0, 10)))
                    .isNotNull();
            assertThat(catchThrowableOfType(TextRefused.class, () -> reader.read(buffer, 0, 10)))
                    .isNotNull();
        }
    }

    @Test
    void aStreamThatFails_isAFaultAndNoStackTrace() {
        InputStream failing = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("the device is gone\u001b[2J");
            }

            @Override
            public int read(byte[] buffer, int offset, int length) throws IOException {
                return read();
            }
        };

        Fault fault = catchThrowableOfType(TextRefused.class, () -> readAll(failing, 10))
                .fault();

        assertThat(fault.line())
                .isEqualTo(
                        "t: the file cannot be read (the device is gone\\u001B[2J); expected a file that can be read");
    }

    @Test
    void linesAreCountedByAnyEnd() {
        assertThat(refusal(new byte[] {'a', '\r', 'b', '\n', 'c', '\r', '\n', 'd', 0})
                        .where()
                        .line())
                .isEqualTo(4);
    }
}
