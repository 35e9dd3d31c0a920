package io.github.firstoff.intake;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * What goes with every keyed reading and is not typed each time.
 *
 * @param time when, to the second
 * @param operator by whom, if that is known
 * @param confirmed whether the value was questioned and confirmed, which its remark then says
 */
public record KeyedCircumstances(OffsetDateTime time, Optional<String> operator, boolean confirmed) {}
