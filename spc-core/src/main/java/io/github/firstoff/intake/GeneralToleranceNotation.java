package io.github.firstoff.intake;

import io.github.firstoff.tolerance.GeneralTolerance;
import io.github.firstoff.tolerance.GeneralTolerance.GeometricClass;
import io.github.firstoff.tolerance.GeneralTolerance.LinearClass;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the general tolerance of a title block, such as {@code ISO 2768-m} or {@code ISO 2768-mK} (ISO 2768-1, 5; ISO 2768-2, 6). */
final class GeneralToleranceNotation {
    static final String EXPECTED =
            "ISO 2768-f, -m, -c or -v, with H, K or L of ISO 2768-2 where the title block has it, "
                    + "such as ISO 2768-m or ISO 2768-mK";
    private static final Pattern WRITTEN =
            Pattern.compile("(?:DIN )?(?:EN )?ISO ?2768(?:-1)? ?[- ] ?([fmcvFMCV])([hklHKL])?");

    private GeneralToleranceNotation() {}

    static Optional<GeneralTolerance> parse(String text) {
        Matcher matcher = WRITTEN.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        LinearClass linear = LinearClass.valueOf(matcher.group(1).toUpperCase(Locale.ROOT));
        Optional<GeometricClass> geometric = Optional.ofNullable(matcher.group(2))
                .map(letter -> GeometricClass.valueOf(letter.toUpperCase(Locale.ROOT)));
        return Optional.of(new GeneralTolerance(linear, geometric));
    }
}
