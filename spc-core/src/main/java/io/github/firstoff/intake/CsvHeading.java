package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.remark.Remark;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** What the columns of a table mean, by their names. */
final class CsvHeading {
    private static final List<ReadingColumn> OF_NUMBERS = List.of(
            ReadingColumn.VALUE,
            ReadingColumn.X,
            ReadingColumn.Y,
            ReadingColumn.Z,
            ReadingColumn.TEMPERATURE,
            ReadingColumn.OFFSET);

    private final Map<ReadingColumn, String> names;
    private final Map<ReadingColumn, Integer> places;
    private final List<Characteristic> characteristics;
    private final List<Integer> nameless;
    private final List<String> written;
    private final int[] numbers;
    private final List<Integer> remarks;

    private CsvHeading(
            Map<ReadingColumn, Integer> places,
            Map<ReadingColumn, String> names,
            List<Characteristic> characteristics,
            List<Integer> nameless,
            List<Integer> remarks,
            List<String> written) {
        this.remarks = List.copyOf(remarks);
        this.names = names;
        this.characteristics = List.copyOf(characteristics);
        this.nameless = List.copyOf(nameless);
        this.written = List.copyOf(written);
        this.places = places;
        this.numbers = IntStream.concat(
                        OF_NUMBERS.stream().mapToInt(this::indexOf).filter(index -> index >= 0),
                        characteristics.stream()
                                .filter(each -> !each.characteristic().isAttribute())
                                .mapToInt(Characteristic::index))
                .toArray();
    }

    /**
     * A column of a wide file.
     *
     * @param index its place, counted from 0
     * @param label what messages call it
     * @param characteristic what it holds
     */
    record Characteristic(int index, String label, ResolvedCharacteristic characteristic) {}

    /** Where the columns of a heading stand. */
    interface Places {
        /** The row as a whole. */
        Where whole();

        /** A column by its place, counted from 0. */
        Where column(int index);

        /** A column that messages call by its name. */
        Where column(int index, String label);

        /** What a column is called by its place, counted from 0. */
        String nameOf(int index);
    }

    /** The places of a heading in a text: columns have numbers. */
    record InText(String file, long line) implements Places {
        @Override
        public Where whole() {
            return new Where(file, line, 0, "");
        }

        @Override
        public Where column(int index) {
            return column(index, "column " + nameOf(index));
        }

        @Override
        public Where column(int index, String label) {
            return new Where(file, line, 0, label);
        }

        @Override
        public String nameOf(int index) {
            return Integer.toString(index + 1);
        }
    }

    /**
     * What a row means as a heading; empty if rows cannot be read under it.
     *
     * @param fields what stands in it
     * @param where where it stands
     * @param separator what parts the names where a message lists them
     */
    static Optional<CsvHeading> of(List<String> fields, Places where, String separator, RowCheck check) {
        return new Reading(fields, where, separator, check).read();
    }

    /** The place of a column, counted from 0; -1 if the file does not have it. */
    int indexOf(ReadingColumn column) {
        return places.getOrDefault(column, -1);
    }

    /** What messages call a column: by the name that the file gives it. */
    String labelOf(ReadingColumn column) {
        return "column " + names.getOrDefault(column, column.word());
    }

    List<Characteristic> characteristics() {
        return characteristics;
    }

    /** The columns without a name, which spreadsheets leave behind; nothing may stand in them. */
    List<Integer> nameless() {
        return nameless;
    }

    /** Whether the rows were refused before, and stand here to be put right. */
    boolean isOfRefusedRows() {
        return !remarks.isEmpty();
    }

    /** The place of a column of remarks on refused rows; -1 if there is none. */
    int indexOfRemark(Predicate<String> name) {
        return remarks.stream()
                .filter(index -> name.test(Blanks.strip(written.get(index))))
                .findFirst()
                .orElse(-1);
    }

    /** What is known of the decimal mark of the numbers under it: what the heading says, failing that what the user states. */
    Marks marksOr(Optional<DecimalMark> stated) {
        int place = indexOfRemark(RefusedTable::isPlace);
        Marks own = place < 0 ? Marks.UNKNOWN : RefusedTable.marksOf(Blanks.strip(written.get(place)));
        // What the user says is meant for the files from which such rows were refused.
        return own == Marks.UNKNOWN ? stated.map(Marks::stated).orElse(Marks.UNKNOWN) : own;
    }

    /** What stands in the columns that are not remarks on refused rows. */
    List<String> withoutRemarks(List<String> texts) {
        if (remarks.isEmpty()) {
            return texts;
        }
        List<String> kept = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            if (!remarks.contains(i)) {
                kept.add(RefusedTable.unescaped(Blanks.strip(texts.get(i))));
            }
        }
        return kept;
    }

    boolean isWide() {
        return !characteristics.isEmpty();
    }

    int size() {
        return written.size();
    }

    /** The names as the file writes them, but for those of remarks. */
    List<String> written() {
        return withoutRemarks(written);
    }

    /** The places of the columns in which numbers may stand. */
    int[] numbers() {
        return numbers.clone();
    }

    /** Whether a column or key is called the note itself, and not by another name for one. */
    static boolean isCalledNote(String name) {
        return ReadingColumn.folded(name).equals(ReadingColumn.NOTE.word());
    }

    /** One look at a heading. */
    private static final class Reading {
        private final List<String> fields;
        private final Places where;
        private final String separator;
        private final RowCheck check;
        private final ResolvedPlan plan;
        private final ReadingSink sink;
        private final Map<ReadingColumn, Integer> places = new EnumMap<>(ReadingColumn.class);
        private final Map<ReadingColumn, String> names = new EnumMap<>(ReadingColumn.class);
        private final List<Characteristic> characteristics = new ArrayList<>();
        private final List<Integer> nameless = new ArrayList<>();
        private final List<Integer> remarks = new ArrayList<>();
        private final Map<String, Integer> unknown = new HashMap<>();
        private final boolean ofRefusedRows;
        private boolean sound = true;

        Reading(List<String> fields, Places where, String separator, RowCheck check) {
            this.fields = fields;
            this.where = where;
            this.separator = separator;
            this.check = check;
            this.plan = check.plan();
            this.sink = check.sink();
            List<String> stripped = fields.stream().map(Blanks::strip).toList();
            this.ofRefusedRows =
                    stripped.stream().anyMatch(RefusedTable::isPlace) && stripped.contains(RefusedTable.REASON);
        }

        private boolean isTheNote(String name) {
            return isCalledNote(name)
                    || (!places.containsKey(ReadingColumn.NOTE)
                            && fields.stream().noneMatch(CsvHeading::isCalledNote));
        }

        private static boolean isRemark(String name) {
            return RefusedTable.isPlace(name)
                    || name.equals(RefusedTable.REASON)
                    || name.equals(RefusedTable.AS_IT_STOOD);
        }

        Optional<CsvHeading> read() {
            for (int i = 0; i < fields.size(); i++) {
                column(i, Blanks.strip(fields.get(i)));
            }
            boolean isLong = ReadingColumn.OF_LONG_ROWS.stream().anyMatch(places::containsKey);
            if (isLong && !characteristics.isEmpty()) {
                Characteristic first = characteristics.get(0);
                refuse(
                        FaultKind.CONTRADICTION,
                        where.column(first.index(), first.label()),
                        "the heading is that of a long file and of a wide file at once",
                        "",
                        "columns characteristic and value, or a column for each characteristic");
                return Optional.empty();
            }
            judgeUnknown(isLong);
            if (ofRefusedRows) {
                sink.notice(
                        where.whole(),
                        Remark.of(
                                "notice.refused-before",
                                "these rows were refused before; the columns that say so are for whoever puts them right{0||; they state no"
                                        + " time, so they come after the rows of the files before this one}",
                                places.containsKey(ReadingColumn.TIME)));
            }
            require(ReadingColumn.PART);
            if (isLong) {
                require(ReadingColumn.CHARACTERISTIC);
                requireValue();
            } else if (characteristics.isEmpty() && sound) {
                refuse(
                        FaultKind.MISSING,
                        where.whole(),
                        "no column holds values",
                        "the columns " + Echo.quoted(String.join(separator, fields)),
                        "columns characteristic and value, or a column for each characteristic ("
                                + Words.oneOf(plan.characteristics().stream()
                                        .map(ResolvedCharacteristic::number)
                                        .toList())
                                + ")");
            }
            return sound
                    ? Optional.of(new CsvHeading(places, names, characteristics, nameless, remarks, fields))
                    : Optional.empty();
        }

        private void column(int index, String name) {
            if (name.isEmpty()) {
                nameless.add(index);
                return;
            }
            if (ofRefusedRows && isRemark(name)) {
                remarks.add(index);
                return;
            }
            // A file may have a note and, beside it, a column of comments.
            Optional<ReadingColumn> known =
                    ReadingColumn.named(name).filter(column -> column != ReadingColumn.NOTE || isTheNote(name));
            if (known.isPresent()) {
                Integer twin = places.putIfAbsent(known.get(), index);
                names.putIfAbsent(known.get(), Echo.plain(name));
                if (twin != null) {
                    refuseTwin(index, name, twin);
                }
                return;
            }
            Optional<ResolvedCharacteristic> characteristic = characteristic(name);
            if (characteristic.isPresent()) {
                for (Characteristic other : characteristics) {
                    if (other.characteristic()
                            .number()
                            .equals(characteristic.get().number())) {
                        refuseTwin(index, name, other.index());
                    }
                }
                characteristics.add(new Characteristic(index, "column " + Echo.plain(name), characteristic.get()));
                return;
            }
            Integer twin = unknown.putIfAbsent(name, index);
            if (twin != null) {
                refuseTwin(index, name, twin);
            }
        }

        private Optional<ResolvedCharacteristic> characteristic(String name) {
            Optional<ResolvedCharacteristic> exact = plan.find(name);
            if (exact.isPresent()) {
                return exact;
            }
            List<ResolvedCharacteristic> folded = plan.characteristics().stream()
                    .filter(each -> each.number().equalsIgnoreCase(name))
                    .toList();
            return folded.size() == 1 ? Optional.of(folded.get(0)) : Optional.empty();
        }

        private void refuseTwin(int index, String name, int twin) {
            refuse(
                    FaultKind.DOUBLED_NAME,
                    where.column(index),
                    "the columns " + where.nameOf(twin) + " and " + where.nameOf(index) + " mean the same",
                    Echo.quoted(name),
                    "each column once");
        }

        /** A name that is nearly a known one is a fault; so is a number that the plan does not have. Others are only noted. */
        private void judgeUnknown(boolean isLong) {
            unknown.entrySet().stream().sorted(Map.Entry.comparingByValue()).forEach(entry -> {
                String name = entry.getKey();
                Where place = where.column(entry.getValue());
                Optional<ReadingColumn> meant = ReadingColumn.meant(name).filter(column -> !places.containsKey(column));
                boolean isNumber = Character.isDigit(name.charAt(0));
                if (meant.isPresent() && isWanted(meant.get(), isLong)) {
                    refuse(
                            FaultKind.MISSPELT,
                            place,
                            "",
                            Echo.quoted(name),
                            Echo.quoted(meant.get().word()));
                    // Named once is enough: it is not missing as well.
                    places.put(meant.get(), entry.getValue());
                } else if (isNumber && !isLong) {
                    check.characteristic(name, place);
                    sound &= check.leavesOthersAlone();
                } else {
                    sink.notice(
                            place,
                            Remark.of(
                                    "notice.not-understood",
                                    "{0} is not understood and was not used",
                                    Echo.quoted(name)));
                }
            });
        }

        /** Whether the column may stand in such a file: a wide one has neither characteristic nor value. */
        private boolean isWanted(ReadingColumn column, boolean isLong) {
            boolean ofLongFiles = ReadingColumn.OF_LONG_ROWS.contains(column);
            return !ofLongFiles || isLong || characteristics.isEmpty();
        }

        /** A file of positions alone may have x and y instead of values. */
        private void requireValue() {
            boolean places = ValueCheck.AXES.stream().anyMatch(this.places::containsKey);
            if (!places) {
                require(ReadingColumn.VALUE);
                return;
            }
            require(ReadingColumn.X);
            require(ReadingColumn.Y);
        }

        private void require(ReadingColumn column) {
            if (!places.containsKey(column)) {
                refuse(
                        FaultKind.MISSING,
                        where.whole(),
                        "the column " + column.word() + " is missing",
                        "the columns "
                                + Echo.quoted(String.join(separator, fields).toLowerCase(Locale.ROOT)),
                        "a column named " + column.word());
            }
        }

        private void refuse(FaultKind kind, Where place, String message, String found, String expected) {
            sound = false;
            sink.refuse(Fault.of(kind, place, message, found, expected));
        }
    }
}
