package io.github.firstoff.command;

import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** The program's name and version, from the jar's manifest. */
public final class ProgramVersion implements IVersionProvider {

    /** {@code firstoff 0.1.0}; from classes that are not in a jar, {@code firstoff (unpackaged)}. */
    public static String text() {
        return Optional.ofNullable(ProgramVersion.class.getPackage().getImplementationVersion())
                .map(version -> "firstoff " + version)
                .orElse("firstoff (unpackaged)");
    }

    @Override
    public String[] getVersion() {
        return new String[] {text()};
    }
}
