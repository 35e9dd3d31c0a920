package io.github.firstoff.keyed;

import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.PartIdentity;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds in a name what points to the other hand of a mirrored pair: the counterpart's part number whatever its dashes, or a word or a
 * letter for that side that stands by itself ({@code 014-S}, {@code stbd 3}; not {@code S014}, where the letter may say serial).
 */
final class OtherHand {
    private static final Pattern WORD = Pattern.compile("(?<![\\p{L}\\d])\\p{L}+(?![\\p{L}\\d])");

    /** Whether a word means the left side. */
    private static final Map<String, Boolean> SIDES = Map.ofEntries(
            Map.entry("p", true),
            Map.entry("port", true),
            Map.entry("s", false),
            Map.entry("stb", false),
            Map.entry("stbd", false),
            Map.entry("starboard", false),
            Map.entry("l", true),
            Map.entry("lh", true),
            Map.entry("left", true),
            Map.entry("r", false),
            Map.entry("rh", false),
            Map.entry("right", false));

    private final PartIdentity part;

    OtherHand(PartIdentity part) {
        this.part = part;
    }

    /** What points to the other hand, in words; empty if nothing does. */
    Optional<String> in(String name) {
        Optional<String> counterpart = part.counterpart()
                .filter(number -> !folded(number).isEmpty() && folded(name).contains(folded(number)))
                .filter(number -> !folded(name).contains(folded(part.number())));
        if (counterpart.isPresent()) {
            return counterpart.map(number -> "names " + number + ", the part of the other hand");
        }
        if (part.hand().isEmpty()) {
            return Optional.empty();
        }
        Hand own = part.hand().get();
        boolean byShip = own == Hand.PORT || own == Hand.STARBOARD;
        Matcher words = WORD.matcher(name);
        Optional<String> found = Optional.empty();
        while (words.find()) {
            String word = words.group();
            String folded = word.toLowerCase(Locale.ROOT);
            boolean letter = folded.length() == 1;
            boolean ofTheSamePair = byShip == (folded.equals("p") || folded.equals("s"));
            Boolean left = SIDES.get(folded);
            if (left == null || (letter && !ofTheSamePair)) {
                continue;
            }
            if (left == own.isLeft()) {
                continue;
            }
            found = Optional.of(
                    "says " + word + ", which could mean " + own.opposite().word());
        }
        return found;
    }

    private static String folded(String text) {
        return text.replaceAll("[^\\p{L}\\d]", "").toUpperCase(Locale.ROOT);
    }
}
