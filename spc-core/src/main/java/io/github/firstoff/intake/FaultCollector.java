package io.github.firstoff.intake;

import io.github.firstoff.remark.Remark;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects what is wrong with inputs while they are read. */
final class FaultCollector {
    private static final int KEPT = 1000;

    private final List<Fault> faults = new ArrayList<>();
    private final Refusals.Groups groups = new Refusals.Groups();
    private final List<Notice> notices = new ArrayList<>();
    private long count;

    void refuse(Fault fault) {
        count++;
        boolean firstOfItsGroup = groups.add(fault);
        if (faults.size() < KEPT || firstOfItsGroup) {
            faults.add(fault);
        }
    }

    /** A message of a draft of a plan, which stands on no sheet. */
    void noticeOfDraft(Fault.Where where, String message) {
        notice(where, Remark.verbatim(message));
    }

    void notice(Fault.Where where, Remark remark) {
        Notice notice = new Notice(where, remark);
        if (notices.size() < KEPT) {
            notices.add(notice);
        }
    }

    long count() {
        return count;
    }

    boolean isEmpty() {
        return count == 0;
    }

    Refusals refusals() {
        return new Refusals(faults, groups.list(), count);
    }

    List<Notice> notices() {
        return List.copyOf(notices);
    }

    /** The same, in the order in which a reader meets the places in the file; of several files, the one first met first. */
    FaultCollector inFileOrder() {
        FaultCollector ordered = new FaultCollector();
        List<String> files =
                faults.stream().map(fault -> fault.where().file()).distinct().toList();
        faults.stream()
                .sorted(Comparator.comparingInt(
                                (Fault fault) -> files.indexOf(fault.where().file()))
                        .thenComparingLong(fault -> fault.where().line())
                        .thenComparingInt(fault -> fault.where().column()))
                .forEach(ordered::refuse);
        ordered.count = count;
        ordered.notices.addAll(notices);
        return ordered;
    }

    void throwIfAny() {
        if (count > 0) {
            throw new InputRefused(refusals());
        }
    }
}
