package io.github.firstoff.report.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Lets charts be drawn on a machine without any font. AWT, even headless, refuses to open our own typeface as long as it finds
 * no font of the system; a font configuration that points to ours satisfies it.
 */
public final class HeadlessFonts {
    private static final String PROPERTY = "sun.awt.fontconfig";

    private HeadlessFonts() {}

    /**
     * Prepares AWT; call it before any class of AWT is loaded. Sets {@code java.awt.headless} and, on a Linux machine without
     * fonts, unpacks the typeface to a temporary folder that is removed when the program ends. Does nothing more where the
     * caller has chosen a font configuration or the machine has fonts.
     *
     * @throws IOException when the temporary folder cannot be written
     */
    public static void prepare() throws IOException {
        if (System.getProperty("java.awt.headless") == null) {
            System.setProperty("java.awt.headless", "true");
        }
        boolean linux =
                System.getProperty("os.name", "").toLowerCase(Locale.ROOT).contains("linux");
        if (linux && System.getProperty(PROPERTY) == null && !machineHasFonts()) {
            System.setProperty(
                    PROPERTY,
                    configure(Files.createTempDirectory("firstoff-fonts")).toString());
        }
    }

    /** Writes typeface and configuration into a folder and returns the configuration file. */
    static Path configure(Path folder) throws IOException {
        Path regular = folder.resolve(Faces.REGULAR + ".ttf");
        Path semibold = folder.resolve(Faces.SEMIBOLD + ".ttf");
        Files.write(regular, Faces.bytes(Faces.REGULAR));
        Files.write(semibold, Faces.bytes(Faces.SEMIBOLD));
        Path file = folder.resolve("fontconfig.properties");
        StringBuilder text = new StringBuilder("version=1\n");
        for (String family : List.of("serif", "sansserif", "monospaced", "dialog", "dialoginput")) {
            for (String style : List.of("plain", "bold", "italic", "bolditalic")) {
                String face = style.startsWith("bold") ? "-lato-semibold" : "-lato-regular";
                text.append(family)
                        .append('.')
                        .append(style)
                        .append(".latin-1=")
                        .append(face)
                        .append('\n');
            }
        }
        text.append("sequence.allfonts=latin-1\n");
        text.append("filename.-lato-regular=").append(regular).append('\n');
        text.append("filename.-lato-semibold=").append(semibold).append('\n');
        Files.writeString(file, text, StandardCharsets.ISO_8859_1);
        for (Path path : List.of(folder, regular, semibold, file)) {
            path.toFile().deleteOnExit();
        }
        return file;
    }

    private static boolean machineHasFonts() throws IOException {
        String home = System.getProperty("user.home", "");
        for (Path folder : List.of(
                Path.of("/usr/share/fonts"),
                Path.of("/usr/local/share/fonts"),
                Path.of(home, ".fonts"),
                Path.of(home, ".local/share/fonts"),
                Path.of(System.getProperty("java.home", ""), "lib/fonts"))) {
            if (Files.isDirectory(folder) && hasFonts(folder)) {
                return true;
            }
        }
        return false;
    }

    private static boolean hasFonts(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder, 6, FileVisitOption.FOLLOW_LINKS)) {
            return files.map(file -> file.toString().toLowerCase(Locale.ROOT))
                    .anyMatch(name -> name.endsWith(".ttf") || name.endsWith(".otf") || name.endsWith(".pfb"));
        }
    }
}
