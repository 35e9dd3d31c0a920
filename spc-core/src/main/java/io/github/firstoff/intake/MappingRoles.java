package io.github.firstoff.intake;

import io.github.firstoff.intake.Mapping.Item;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * Finds out what the columns of an example are by holding their numbers against the plan: the nominal is the column whose numbers are
 * nominals of the plan, tolerances and limits are those that agree with it, and the value is the one that lies near.
 */
final class MappingRoles {
    /** A value farther from the middle of its limits than so many widths is no reading of it. */
    private static final BigDecimal WIDTHS = BigDecimal.TEN;

    private static final int LEAST_LETTERS = 3;
    private static final int MOST_NAME_COLUMNS = 6;

    /** What a column is by its heading. */
    private static final Map<String, Item> BY_HEADING = itemsByHeading();

    private final ExampleTable table;
    private final ResolvedPlan plan;
    private final DecimalMark decimalMark;
    private final Map<Item, List<Integer>> items = new EnumMap<>(Item.class);
    private final Map<String, String> names = new LinkedHashMap<>();
    private final Map<String, String> matchedBy = new HashMap<>();
    private final Set<String> unmatched = new LinkedHashSet<>();
    private final Map<Long, String> nameAt = new HashMap<>();
    private int score;

    private MappingRoles(ExampleTable table, ResolvedPlan plan, Optional<Integer> nameColumn) {
        this.table = table;
        this.plan = plan;
        this.decimalMark = decimalMark();
        byHeading();
        nameColumn.ifPresent(this::search);
    }

    /** What is found under the column of names by which most rows are understood; the first of those that are equal. */
    static MappingRoles of(ExampleTable table, ResolvedPlan plan) {
        MappingRoles best = new MappingRoles(table, plan, Optional.empty());
        for (int column : best.nameColumns()) {
            MappingRoles found = new MappingRoles(table, plan, Optional.of(column));
            if (found.score() > best.score()) {
                best = found;
            }
        }
        return best;
    }

    private static Map<String, Item> itemsByHeading() {
        Map<String, Item> all = new HashMap<>();
        HeadWords.PART.forEach(word -> all.put(word, Item.PART));
        HeadWords.OPERATOR.forEach(word -> all.put(word, Item.OPERATOR));
        HeadWords.TIME.forEach(word -> all.put(word, Item.TIME));
        List.of("unit", "units", "einheit", "einh").forEach(word -> all.put(word, Item.UNIT));
        List.of("machine", "maschine").forEach(word -> all.put(word, Item.MACHINE));
        List.of("note", "remark", "comment", "bemerkung").forEach(word -> all.put(word, Item.NOTE));
        return all;
    }

    /** Columns that the heading names, where what stands in them can be that. */
    private void byHeading() {
        List<String> heading = table.heading();
        for (int i = 0; i < heading.size() && i < table.columns(); i++) {
            Item item = BY_HEADING.get(ReadingColumn.folded(heading.get(i)));
            int column = i;
            boolean sound = item != null
                    && !items.containsKey(item)
                    && table.records().stream().allMatch(each -> mayBe(item, each.field(column)));
            if (sound) {
                items.put(item, List.of(column));
            }
        }
    }

    private boolean mayBe(Item item, String text) {
        return switch (item) {
            case PART ->
                !text.isEmpty()
                        && !text.equals(plan.part().number())
                        && plan.part().counterpart().filter(text::equals).isEmpty();
            case TIME -> Timestamp.parse(text).isPresent();
            case UNIT -> text.isEmpty() || Unit.parse(text).isPresent();
            default -> true;
        };
    }

    private boolean isTaken(int column) {
        return items.values().stream().anyMatch(columns -> columns.contains(column));
    }

    ExampleTable table() {
        return table;
    }

    /** How many rows are understood; 0 if the example cannot be read in this way. */
    int score() {
        return score;
    }

    DecimalMark decimalMark() {
        int points = 0;
        int commas = 0;
        for (ExampleTable.Entry each : table.records()) {
            for (String field : each.fields()) {
                if (ExampleTable.isNumber(field)) {
                    points += field.indexOf('.') >= 0 ? 1 : 0;
                    commas += field.indexOf(',') >= 0 ? 1 : 0;
                }
            }
        }
        return commas > points ? DecimalMark.COMMA : DecimalMark.POINT;
    }

    Map<Item, List<Integer>> items() {
        return items;
    }

    /** Names of the example and the numbers that they mean, apart from those that are the number itself. */
    Map<String, String> names() {
        return names;
    }

    List<String> unmatchedNames() {
        return List.copyOf(unmatched);
    }

    String nameAt(long line) {
        return nameAt.getOrDefault(line, "");
    }

    String matchedBy(String name) {
        return matchedBy.getOrDefault(name, "");
    }

    private Optional<BigDecimal> number(String text) {
        if (!ExampleTable.isNumber(text)) {
            return Optional.empty();
        }
        try {
            return Optional.of(Marks.stated(decimalMark).number(text));
        } catch (NumberRefused noNumber) {
            return Optional.empty();
        }
    }

    private void search(int nameColumn) {
        List<Integer> nameColumns = List.of(nameColumn);
        items.put(Item.NAME, nameColumns);
        Map<String, List<ExampleTable.Entry>> byName = new LinkedHashMap<>();
        for (ExampleTable.Entry each : table.records()) {
            String name =
                    MappedReadings.joined(nameColumns.stream().map(each::field).toList());
            nameAt.put(each.line(), name);
            byName.computeIfAbsent(name, key -> new ArrayList<>()).add(each);
        }
        Optional<Integer> nominal = nominalColumn(nameColumns);
        Map<String, ResolvedCharacteristic> meant = new LinkedHashMap<>();
        matchByNumber(byName, meant);
        nominal.ifPresent(column -> matchByNominal(byName, meant, column));
        matchByWords(byName, meant);
        Optional<Integer> actual = actualColumn(nominal, meant, byName);
        if (actual.isEmpty()) {
            return;
        }
        items.put(Item.ACTUAL, List.of(actual.get()));
        nominal.ifPresent(column -> items.put(Item.NOMINAL, List.of(column)));
        tolerances(nameColumns, nominal, actual.get(), meant, byName);
        byName.keySet().forEach(name -> {
            ResolvedCharacteristic found = meant.get(name);
            if (found == null) {
                unmatched.add(name);
            } else if (!found.number().equals(name)) {
                names.put(name, found.number());
            }
        });
        score = 10 * understood(meant, nominal, actual.get()) + items.size();
    }

    /** Rows whose name is matched and whose value and nominal can be those of what it means. */
    private int understood(Map<String, ResolvedCharacteristic> meant, Optional<Integer> nominal, int actual) {
        int rows = 0;
        for (ExampleTable.Entry each : table.records()) {
            ResolvedCharacteristic one = meant.get(nameAt(each.line()));
            if (one != null) {
                Optional<BigDecimal> stated = nominal.flatMap(column -> number(each.field(column)));
                Optional<BigDecimal> own =
                        one.isAttribute() ? Optional.empty() : one.zone().nominal();
                boolean other =
                        stated.isPresent() && own.isPresent() && own.get().compareTo(stated.get()) != 0;
                rows += !other && canBe(each.field(actual), one) ? 1 : 0;
            }
        }
        return rows;
    }

    private boolean canBe(String text, ResolvedCharacteristic one) {
        if (one.isAttribute()) {
            return PassOrFail.parse(text).isPresent();
        }
        Optional<BigDecimal> number = number(text);
        Limits limits = one.limits();
        return number.isPresent()
                && (limits.width().isEmpty() || away(number.get(), limits).compareTo(most(limits)) <= 0);
    }

    private static BigDecimal away(BigDecimal number, Limits limits) {
        return number.subtract(limits.lower().orElseThrow())
                .abs()
                .min(number.subtract(limits.upper().orElseThrow()).abs());
    }

    private static BigDecimal most(Limits limits) {
        return limits.width().orElseThrow().multiply(WIDTHS);
    }

    /**
     * Columns that may hold names: those with words that are not the same in every row, and the first whose numbers are all numbers of
     * the plan.
     */
    private List<Integer> nameColumns() {
        List<Integer> columns = new ArrayList<>();
        List<ExampleTable.Entry> records = table.records();
        for (int i = 0; i < table.columns() && columns.size() < MOST_NAME_COLUMNS && !records.isEmpty(); i++) {
            int column = i;
            long texts = records.stream()
                    .map(each -> each.field(column))
                    .filter(field -> !field.isEmpty()
                            && !ExampleTable.isNumber(field)
                            && PassOrFail.parse(field).isEmpty())
                    .count();
            boolean differ = records.size() == 1
                    || records.stream()
                                    .map(each -> each.field(column))
                                    .distinct()
                                    .limit(2)
                                    .count()
                            > 1;
            if (texts * 2 > records.size() && differ && !isTaken(i)) {
                columns.add(i);
            }
        }
        for (int i = 0; i < table.columns(); i++) {
            int column = i;
            boolean numbers = !records.isEmpty()
                    && records.stream()
                            .allMatch(each -> plan.find(each.field(column)).isPresent());
            if (numbers && !columns.contains(i) && !isTaken(i)) {
                columns.add(i);
                break;
            }
        }
        return columns;
    }

    private Optional<Integer> nominalColumn(List<Integer> nameColumns) {
        Map<Integer, Integer> hits = new LinkedHashMap<>();
        for (int i = 0; i < table.columns(); i++) {
            if (nameColumns.contains(i) || isTaken(i)) {
                continue;
            }
            for (ExampleTable.Entry each : table.records()) {
                Optional<BigDecimal> number = number(each.field(i));
                if (number.isPresent() && number.get().signum() != 0 && isNominal(number.get())) {
                    MappingDraft.count(hits, i);
                }
            }
        }
        // A value may lie exactly on its nominal once; a column of nominals does so in most rows.
        return MappingDraft.most(hits).filter(column -> hits.get(column) * 2 > numbersIn(column));
    }

    private int numbersIn(int column) {
        return (int) table.records().stream()
                .filter(each -> number(each.field(column))
                        .filter(number -> number.signum() != 0)
                        .isPresent())
                .count();
    }

    private boolean isNominal(BigDecimal number) {
        return measured().stream()
                .anyMatch(each -> each.zone()
                        .nominal()
                        .filter(own -> own.compareTo(number) == 0)
                        .isPresent());
    }

    private List<ResolvedCharacteristic> measured() {
        return plan.characteristics().stream()
                .filter(each -> !each.isAttribute())
                .toList();
    }

    private void take(
            String name, ResolvedCharacteristic found, String how, Map<String, ResolvedCharacteristic> meant) {
        meant.put(name, found);
        matchedBy.put(name, how);
    }

    /** The number of the plan, as the name itself or behind letters and zeros. */
    private void matchByNumber(
            Map<String, List<ExampleTable.Entry>> byName, Map<String, ResolvedCharacteristic> meant) {
        Map<String, String> ends = new LinkedHashMap<>();
        for (String name : byName.keySet()) {
            Optional<ResolvedCharacteristic> exact = plan.find(name);
            exact.ifPresent(found -> take(name, found, "the number itself", meant));
            String end = name.replaceFirst("^[\\p{L}#._ -]{1,12}?0*(?=[0-9])", "");
            if (exact.isEmpty() && plan.find(end).isPresent()) {
                ends.put(name, end);
            }
        }
        // One name that ends in a number may do so by chance; most names of a file do not.
        boolean believed = ends.size() * 2 > byName.size() && new LinkedHashSet<>(ends.values()).size() == ends.size();
        if (believed) {
            ends.forEach((name, end) -> take(name, plan.find(end).orElseThrow(), "the number at its end", meant));
        }
    }

    private void matchByNominal(
            Map<String, List<ExampleTable.Entry>> byName, Map<String, ResolvedCharacteristic> meant, int nominal) {
        Claims claims = new Claims();
        for (Map.Entry<String, List<ExampleTable.Entry>> each : byName.entrySet()) {
            if (meant.containsKey(each.getKey())) {
                continue;
            }
            ExampleTable.Entry first = each.getValue().get(0);
            Optional<BigDecimal> size = number(first.field(nominal));
            List<ResolvedCharacteristic> same = measured().stream()
                    .filter(one -> size.isPresent()
                            && one.zone()
                                    .nominal()
                                    .filter(own -> own.compareTo(size.get()) == 0)
                                    .isPresent())
                    .toList();
            List<ResolvedCharacteristic> alike = same.size() < 2
                    ? same
                    : same.stream()
                            .filter(one -> agreesWith(first, size.orElseThrow(), one))
                            .toList();
            if (alike.size() == 1) {
                claims.add(each.getKey(), alike.get(0), same.size() == 1 ? "the nominal" : "nominal and tolerance");
            }
        }
        claims.settle(meant);
    }

    /** Names and what they seem to mean. Where two names mean the same, neither is believed. */
    private final class Claims {
        private final Map<String, ResolvedCharacteristic> of = new LinkedHashMap<>();
        private final Map<String, String> how = new HashMap<>();
        private final Map<ResolvedCharacteristic, Integer> counts = new LinkedHashMap<>();

        void add(String name, ResolvedCharacteristic one, String reason) {
            of.put(name, one);
            how.put(name, reason);
            MappingDraft.count(counts, one);
        }

        void settle(Map<String, ResolvedCharacteristic> meant) {
            List<ResolvedCharacteristic> before = List.copyOf(meant.values());
            of.forEach((name, one) -> {
                if (counts.get(one) == 1 && !before.contains(one)) {
                    take(name, one, how.get(name), meant);
                }
            });
        }
    }

    /** Whether the limits of a characteristic stand in the row, as limits or as deviations. */
    private boolean agreesWith(ExampleTable.Entry row, BigDecimal nominal, ResolvedCharacteristic one) {
        List<BigDecimal> numbers = new ArrayList<>();
        row.fields().forEach(field -> number(field).ifPresent(numbers::add));
        Limits limits = one.limits();
        return stands(numbers, limits.upper(), nominal) && stands(numbers, limits.lower(), nominal);
    }

    private static boolean stands(List<BigDecimal> numbers, Optional<BigDecimal> limit, BigDecimal nominal) {
        return limit.isPresent()
                && numbers.stream()
                        .anyMatch(number -> number.compareTo(limit.get()) == 0
                                || number.compareTo(limit.get().subtract(nominal)) == 0
                                || number.compareTo(nominal.subtract(limit.get())) == 0);
    }

    /** Words of the name that are words of one feature alone, or begin like them. */
    private void matchByWords(Map<String, List<ExampleTable.Entry>> byName, Map<String, ResolvedCharacteristic> meant) {
        Claims claims = new Claims();
        for (Map.Entry<String, List<ExampleTable.Entry>> each : byName.entrySet()) {
            if (meant.containsKey(each.getKey())) {
                continue;
            }
            boolean result = each.getValue().stream()
                    .allMatch(row -> row.fields().stream().noneMatch(ExampleTable::isNumber));
            int best = 0;
            List<ResolvedCharacteristic> alike = new ArrayList<>();
            for (ResolvedCharacteristic one : plan.characteristics()) {
                boolean mayBe = !meant.containsValue(one) && one.isAttribute() == result;
                int common = mayBe ? common(each.getKey(), one.characteristic().feature()) : 0;
                if (common > best) {
                    best = common;
                    alike.clear();
                }
                if (common == best && common > 0) {
                    alike.add(one);
                }
            }
            if (alike.size() == 1) {
                claims.add(each.getKey(), alike.get(0), "words of the feature");
            }
        }
        claims.settle(meant);
    }

    private static int common(String name, String feature) {
        int common = 0;
        for (String word : words(name)) {
            for (String other : words(feature)) {
                int shorter = Math.min(word.length(), other.length());
                boolean alike = shorter >= LEAST_LETTERS
                        && (word.startsWith(other.substring(0, shorter)) || other.startsWith(word));
                common += alike ? 1 : 0;
            }
        }
        return common;
    }

    private static List<String> words(String text) {
        return List.of(text.toLowerCase(Locale.ROOT).split("[^\\p{L}]+"));
    }

    private Optional<Integer> actualColumn(
            Optional<Integer> nominal,
            Map<String, ResolvedCharacteristic> meant,
            Map<String, List<ExampleTable.Entry>> byName) {
        Map<Integer, Integer> hits = new LinkedHashMap<>();
        byName.forEach((name, rows) -> {
            ResolvedCharacteristic one = meant.get(name);
            for (ExampleTable.Entry row : rows) {
                for (int i = 0; i < table.columns() && one != null; i++) {
                    boolean other = isTaken(i) || nominal.orElse(-1) == i;
                    if (!other && isNear(row.field(i), one)) {
                        MappingDraft.count(hits, i);
                    }
                }
            }
        });
        return MappingDraft.most(hits);
    }

    private boolean isNear(String text, ResolvedCharacteristic one) {
        if (one.isAttribute()) {
            return PassOrFail.parse(text).isPresent();
        }
        Optional<BigDecimal> number = number(text);
        Limits limits = one.limits();
        Optional<BigDecimal> width = limits.width();
        if (number.isEmpty() || width.isEmpty() || isLimit(number.get(), one)) {
            return false;
        }
        boolean near = away(number.get(), limits).compareTo(most(limits)) <= 0;
        // Where the limits lie about zero, a deviation is as near as a value: such rows tell nothing apart.
        boolean tells = limits.lower().orElseThrow().abs().compareTo(most(limits)) > 0;
        return near && tells;
    }

    private static boolean isLimit(BigDecimal number, ResolvedCharacteristic one) {
        return one.limits()
                        .lower()
                        .filter(limit -> limit.compareTo(number) == 0)
                        .isPresent()
                || one.limits()
                        .upper()
                        .filter(limit -> limit.compareTo(number) == 0)
                        .isPresent();
    }

    private void tolerances(
            List<Integer> nameColumns,
            Optional<Integer> nominal,
            int actual,
            Map<String, ResolvedCharacteristic> meant,
            Map<String, List<ExampleTable.Entry>> byName) {
        Map<Item, Function<ResolvedCharacteristic, Optional<BigDecimal>>> wanted = new EnumMap<>(Item.class);
        wanted.put(Item.UPPER_LIMIT, one -> one.limits().upper());
        wanted.put(Item.LOWER_LIMIT, one -> one.limits().lower());
        if (nominal.isPresent()) {
            wanted.put(Item.UPPER_TOLERANCE, one -> deviation(one, one.limits().upper()));
            wanted.put(Item.LOWER_TOLERANCE, one -> deviation(one, one.limits().lower()));
        }
        Set<Integer> taken = new LinkedHashSet<>(nameColumns);
        taken.add(actual);
        nominal.ifPresent(taken::add);
        items.values().forEach(taken::addAll);
        wanted.forEach((item, of) -> {
            Map<Integer, Integer> hits = new LinkedHashMap<>();
            Map<Integer, Integer> misses = new LinkedHashMap<>();
            byName.forEach((name, rows) -> {
                ResolvedCharacteristic one = meant.get(name);
                Optional<BigDecimal> expected = one == null || one.isAttribute() ? Optional.empty() : of.apply(one);
                for (ExampleTable.Entry row : rows) {
                    for (int i = 0; i < table.columns() && expected.isPresent(); i++) {
                        Optional<BigDecimal> number = number(row.field(i));
                        if (number.isPresent() && !taken.contains(i)) {
                            MappingDraft.count(number.get().compareTo(expected.get()) == 0 ? hits : misses, i);
                        }
                    }
                }
            });
            MappingDraft.most(hits)
                    .filter(column -> hits.get(column) > misses.getOrDefault(column, 0))
                    .ifPresent(column -> {
                        taken.add(column);
                        items.put(item, List.of(column));
                    });
        });
        boolean oneSided = items.containsKey(Item.UPPER_TOLERANCE) && !items.containsKey(Item.LOWER_TOLERANCE);
        if (oneSided) {
            items.put(Item.TOLERANCE, items.remove(Item.UPPER_TOLERANCE));
        }
    }

    private static Optional<BigDecimal> deviation(ResolvedCharacteristic one, Optional<BigDecimal> limit) {
        return limit.flatMap(each -> one.zone().nominal().map(each::subtract));
    }
}
