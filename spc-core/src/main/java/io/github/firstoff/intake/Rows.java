package io.github.firstoff.intake;

import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.remark.Remark;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Keeps account of rows. A row of which anything is refused is refused whole, because somebody will put it right and read it again, and
 * half of it would then be there twice. Good rows are handed on in blocks, in the order of the file.
 */
final class Rows implements ReadingSink {
    private static final int BLOCK = 1024;
    private static final int PLACES_NAMED = 5;

    /** Looks at the readings of a row that is good by itself; a fault refuses the row. */
    interface Admission {
        /** Admits all of them and returns null, or none and returns why. */
        @Nullable
        Fault admit(List<ReadingBlock.OfPart> readings, List<Where> places);
    }

    private final FaultCollector faults;
    private final IntakeSettings settings;
    private final Admission admission;
    private final Corrections corrections;
    private final Consumer<ReadingBlock> taker;

    private final List<ReadingBlock.OfPart> block = new ArrayList<>();
    private final List<ReadingBlock.OfPart> ofRow = new ArrayList<>();
    private final List<Where> places = new ArrayList<>();
    private final List<Fault> ofRowRefused = new ArrayList<>();
    private final List<String> withoutReading = new ArrayList<>();
    private @Nullable Row row;
    private String file = "";
    private long read;
    private long used;
    private long refused;
    private long explained;
    private long standingAgain;
    private long readings;
    private long ofFiles;
    private RowCounts ofAll = RowCounts.NONE;

    /** An account of rows that stand nowhere else. */
    Rows(FaultCollector faults, IntakeSettings settings, Admission admission, Consumer<ReadingBlock> taker) {
        this(faults, settings, admission, Corrections.NONE, taker);
    }

    Rows(
            FaultCollector faults,
            IntakeSettings settings,
            Admission admission,
            Corrections corrections,
            Consumer<ReadingBlock> taker) {
        this.faults = faults;
        this.settings = settings;
        this.admission = admission;
        this.corrections = corrections;
        this.taker = taker;
    }

    IntakeSettings settings() {
        return settings;
    }

    void beginFile(String name) {
        file = name;
        read = 0;
        used = 0;
        refused = 0;
        explained = 0;
        standingAgain = 0;
        readings = 0;
        withoutReading.clear();
    }

    /** Ends the file: hands on what is left, and names the rows without a reading. */
    void endFile() {
        ofAll = ofAll.plus(counts());
        handOn();
        long empty = explained - standingAgain;
        if (empty > 0) {
            faults.notice(
                    Where.inFile(file),
                    Remark.of(
                            "notice.rows-without-reading",
                            "{0} {0|row holds|rows hold} no reading ({1}{2|, …|})",
                            empty,
                            String.join(", ", withoutReading),
                            empty > withoutReading.size()));
        }
        if (standingAgain > 0) {
            faults.notice(
                    Where.inFile(file),
                    Remark.of(
                            "notice.rows-again",
                            "{0} {0|row at fault stands|rows at fault stand} again in a table of refused rows, and what stands there"
                                    + " counts instead",
                            standingAgain));
        }
    }

    /** Begins a row; what is refused from here to its end concerns it. */
    void begin(Row next) {
        row = next;
        read++;
        ofRow.clear();
        places.clear();
        ofRowRefused.clear();
    }

    /** Ends the row: it is used, refused, or holds no reading. */
    void end() {
        Row ended = row;
        if (ended == null) {
            throw new IllegalStateException("a row ends that did not begin");
        }
        if (ofRowRefused.isEmpty() && !ofRow.isEmpty()) {
            Fault fault = admission.admit(ofRow, places);
            if (fault != null) {
                refuse(fault);
            }
        }
        row = null;
        if (!ofRowRefused.isEmpty()) {
            refuseRow(ended.refused(ofRowRefused));
        } else if (ofRow.isEmpty()) {
            explained++;
            if (withoutReading.size() < PLACES_NAMED) {
                withoutReading.add(ended.where().spot());
            }
        } else {
            used++;
            readings += ofRow.size();
            block.addAll(ofRow);
            if (block.size() >= BLOCK) {
                handOn();
            }
        }
    }

    private void refuseRow(RefusedRow ended) {
        if (!corrections.isEmpty() && corrections.take(ended)) {
            explained++;
            standingAgain++;
            return;
        }
        ofRowRefused.forEach(faults::refuse);
        refused++;
        settings.refusedRows().accept(ended);
    }

    private void handOn() {
        if (!block.isEmpty()) {
            taker.accept(new ReadingBlock(file, block));
            block.clear();
        }
    }

    @Override
    public void reading(String part, Reading reading, Where where) {
        ofRow.add(new ReadingBlock.OfPart(part, reading));
        places.add(where);
    }

    @Override
    public void refuse(Fault fault) {
        if (row == null) {
            faults.refuse(fault);
            ofFiles++;
        } else {
            ofRowRefused.add(fault);
        }
    }

    /** Refuses the file as a whole, if need be in the midst of a row. */
    void refuseFile(Fault fault) {
        if (row != null) {
            end();
        }
        refuse(fault);
    }

    @Override
    public void notice(Where where, Remark remark) {
        faults.notice(where, remark);
    }

    /** What became of the rows of the file. */
    RowCounts counts() {
        return new RowCounts(read, used, refused, explained);
    }

    /** What became of the rows of all files that were ended. */
    RowCounts countsOfAll() {
        return ofAll;
    }

    /** How many readings of the file were handed on or are about to be. */
    long readings() {
        return readings;
    }

    /** Whether rows of the file stand again in a table of refused rows, which is read for itself. */
    boolean standAgainElsewhere() {
        return standingAgain > 0;
    }

    /** How many faults so far concern a file as a whole. */
    long faultsOfFiles() {
        return ofFiles;
    }
}
