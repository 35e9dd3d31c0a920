package io.github.firstoff.intake;

import io.github.firstoff.inspection.Reading;

/** The first reading of the first piece, for tests whose files are about little more than one. */
final class FirstReading {
    private FirstReading() {}

    /** What is known of how the characteristic was measured; a failure if any row was refused. */
    static Reading.Context context(Intake intake, String characteristic) {
        return intake.recordOrRefuse().parts().get(0).of(characteristic).get(0).context();
    }
}
