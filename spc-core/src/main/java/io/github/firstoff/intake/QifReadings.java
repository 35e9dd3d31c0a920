package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;

/**
 * Readings as the results of a QIF document (ISO 23952:2020, QIF 3.0). A row is one measurement of one characteristic.
 *
 * <p>The file is read twice: once for what it says of characteristics, units and pieces, which partly stands behind the measurements,
 * and once for the measurements, which are handed on one by one. Where the input can only be read once it is kept in memory, up to a
 * bound.
 */
final class QifReadings implements ReadingSource {
    private static final int MOST_KEPT = 256 << 20;

    @Override
    public boolean recognises(Beginning beginning) {
        return beginning.firstCharacter() == '<';
    }

    @Override
    public void read(InputBytes bytes, RowCheck check) throws IOException {
        Input input = bytes.input();
        if (input.canBeReadAgain()) {
            readTwice(input, input, bytes, check);
            return;
        }
        byte[] kept = bytes.readNBytes(MOST_KEPT);
        if (bytes.read() >= 0) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    Where.inFile(input.name()),
                    "",
                    "a QIF document of more than " + (MOST_KEPT >> 20) + " MiB that can be read only once",
                    "a file"));
        }
        Input memory = Input.bytes(input.name(), kept, relative -> java.util.Optional.empty());
        try (InputBytes again = new InputBytes(memory, Long.MAX_VALUE)) {
            readTwice(input, memory, again, check);
        }
    }

    private static void readTwice(Input input, Input source, InputBytes second, RowCheck check) throws IOException {
        QifDocument document;
        try (InputBytes first = new InputBytes(source, Long.MAX_VALUE)) {
            document = QifDocument.read(input.name(), QifText.of(first));
        }
        check.library().put(input, document);
        new QifMeasurements(document, check).read(new QifXml(input.name(), QifText.of(second)));
    }
}
