package io.github.firstoff.intake;

import java.util.List;
import java.util.Optional;

/**
 * The whole text of a small file.
 *
 * @param name the file's name
 * @param text the text without a byte order mark
 * @param sha256 the SHA-256 of its bytes in hexadecimal
 */
record SourceText(String name, String text, String sha256) {

    /** Reads all of it, or refuses it with one fault. */
    static SourceText of(Input input, long most) {
        return of(input, most, Optional.empty());
    }

    /** Reads all of it, or refuses it with one fault: what is plainly another kind of file is called what it is. */
    static SourceText of(Input input, long most, OtherFile.Wanted wanted) {
        return of(input, most, Optional.of(wanted));
    }

    private static SourceText of(Input input, long most, Optional<OtherFile.Wanted> wanted) {
        try (InputBytes bytes = new InputBytes(input, most)) {
            Optional<Fault> other = wanted.flatMap(each -> OtherFile.insteadOf(each, input.name(), bytes.beginning()));
            if (other.isPresent()) {
                throw InputRefused.because(other.get());
            }
            TextReader reader = TextReader.utf8(bytes);
            StringBuilder text = new StringBuilder();
            char[] buffer = new char[8192];
            int count = reader.read(buffer, 0, buffer.length);
            while (count >= 0) {
                text.append(buffer, 0, count);
                count = reader.read(buffer, 0, buffer.length);
            }
            return new SourceText(input.name(), text.toString(), bytes.sha256());
        } catch (TextRefused refused) {
            throw InputRefused.because(refused.fault());
        }
    }

    /** The line of that number, counted from 1, without its end; empty beyond the last. */
    String line(long number) {
        List<String> lines = text.lines().skip(number - 1).limit(1).toList();
        return lines.isEmpty() ? "" : lines.get(0);
    }
}
