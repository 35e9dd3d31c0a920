package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.remark.Remark;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;

/**
 * Opens workbooks. What is in a zip file can only be found from its end, so the bytes are put aside in a temporary file, which is deleted
 * when the workbook is closed.
 */
final class WorkbookFile {
    private static final long LARGEST = 256L << 20;
    private static final int ENTRY_LENGTH = 30;
    private static final int[] OLD = {0xD0, 0xCF, 0x11, 0xE0};

    private WorkbookFile() {}

    /** Whether an input that begins like this is a zip file, as workbooks are, or one of the older kind. */
    static boolean recognises(Beginning beginning) {
        return beginning.startsWith('P', 'K', 3, 4)
                || beginning.startsWith('P', 'K', 5, 6)
                || beginning.startsWith('P', 'K', 7, 8)
                || beginning.startsWith(OLD);
    }

    /** Whether it says in its first entry that it is an OpenDocument workbook, as such workbooks must (ISO/IEC 26300-3, 3.3). */
    static boolean saysOpenDocument(Beginning beginning) {
        byte[] bytes = beginning.bytes();
        if (!recognises(beginning) || bytes.length < ENTRY_LENGTH) {
            return false;
        }
        String first = new String(bytes, 0, Math.min(bytes.length, 1000), StandardCharsets.ISO_8859_1);
        int nameLength = bytes[26] & 0xFF;
        int extraLength = bytes[28] & 0xFF;
        return first.startsWith("mimetype", ENTRY_LENGTH)
                && first.startsWith(OdsWorkbook.TYPE, ENTRY_LENGTH + nameLength + extraLength);
    }

    /** Opens the workbook that the bytes are. */
    static Workbook open(InputBytes bytes) throws IOException {
        String file = bytes.input().name();
        if (bytes.beginning().startsWith(OLD)) {
            throw old(file, bytes);
        }
        Path aside = Files.createTempFile(asideOfThisRun(), ".workbook");
        try {
            copy(file, bytes, aside);
            return new Aside(open(file, aside), aside);
        } catch (IOException | RuntimeException fault) {
            Files.deleteIfExists(aside);
            throw fault;
        }
    }

    private static void copy(String file, InputBytes bytes, Path aside) throws IOException {
        try (OutputStream out = Files.newOutputStream(aside)) {
            byte[] buffer = new byte[1 << 16];
            long all = 0;
            int count = bytes.read(buffer, 0, buffer.length);
            while (count >= 0) {
                all += count;
                if (all > LARGEST) {
                    throw new TextRefused(Fault.of(
                            FaultKind.TOO_LARGE,
                            Where.inFile(file),
                            "",
                            "a workbook of more than " + LARGEST / (1 << 20) + " MiB",
                            "at most that; save very large tables as CSV"));
                }
                out.write(buffer, 0, count);
                count = bytes.read(buffer, 0, buffer.length);
            }
        }
    }

    private static Workbook open(String file, Path aside) throws IOException {
        ZipDirectory directory = ZipDirectory.of(file, aside);
        Set<String> names = directory.names();
        if (names.contains(SmallParts.TYPES)) {
            SmallParts.require(file, aside, directory);
            return XlsxWorkbook.open(file, aside);
        }
        if (names.contains("content.xml") && names.contains("mimetype")) {
            return OdsWorkbook.open(file, aside, directory);
        }
        throw wrongFormat(
                file, "a zip archive that is no workbook", "a workbook (.xlsx or .ods), or text; unpack it first");
    }

    /** A workbook of the older binary kind, or one with a password: both lie in the same container, and its names tell which. */
    private static TextRefused old(String file, InputBytes bytes) throws IOException {
        String password = "EncryptedPackage";
        byte[] buffer = new byte[1 << 16];
        String before = "";
        long all = 0;
        int count = bytes.read(buffer, 0, buffer.length);
        while (count >= 0 && all < LARGEST) {
            all += count;
            String text = before + new String(buffer, 0, count, StandardCharsets.ISO_8859_1).replace("\0", "");
            if (text.contains(password)) {
                return locked(file);
            }
            before = text.substring(Math.max(0, text.length() - password.length()));
            count = bytes.read(buffer, 0, buffer.length);
        }
        return wrongFormat(
                file,
                "a workbook of the older binary kind (.xls)",
                "one of the newer kind; save it as .xlsx, .ods or CSV");
    }

    /** The fault of a workbook that only a password opens. */
    static TextRefused locked(String file) {
        return wrongFormat(
                file, "a workbook with a password", "a workbook without one; save it again without a password");
    }

    private static TextRefused wrongFormat(String file, String found, String expected) {
        return new TextRefused(Fault.of(FaultKind.WRONG_FORMAT, Where.inFile(file), "", found, expected));
    }

    /** An open workbook and the file in which it was put aside. */
    private static final class Aside implements Workbook {
        private final Workbook workbook;
        private final Path file;

        Aside(Workbook workbook, Path file) {
            this.workbook = workbook;
            this.file = file;
        }

        @Override
        public void walk(SheetTaker taker) throws IOException {
            workbook.walk(taker);
        }

        @Override
        public java.util.List<Remark> notices() {
            return workbook.notices();
        }

        @Override
        public void close() throws IOException {
            try {
                workbook.close();
            } finally {
                Files.deleteIfExists(file);
            }
        }
    }

    /** How the names of copies begin that this run lays aside; those of another run begin otherwise. */
    static String asideOfThisRun() {
        return "firstoff-" + ProcessHandle.current().pid() + "-";
    }
}
