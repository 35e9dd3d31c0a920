package io.github.firstoff.command;

import io.github.firstoff.report.model.ReportModel;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Walks through what a sheet prints, wherever it stands, and changes one digit of one text or one number of one picture: the figures are found in
 * the records of the model, not listed, so that none is left out.
 */
final class OneFigureChanged {
    private static final Pattern DIGIT = Pattern.compile("\\d");

    private final int wanted;
    private int seen;
    private Optional<String> change = Optional.empty();

    private OneFigureChanged(int wanted) {
        this.wanted = wanted;
    }

    /** How many figures a sheet has that can be changed. */
    static int count(ReportModel model) {
        OneFigureChanged walk = new OneFigureChanged(-1);
        model.blocks().forEach(walk::copy);
        return walk.seen;
    }

    /**
     * The sheet with another figure.
     *
     * @param model the sheet
     * @param place which one, counted from 0
     * @param said takes what was changed into what
     */
    static ReportModel at(ReportModel model, int place, List<String> said) {
        OneFigureChanged walk = new OneFigureChanged(place);
        List<io.github.firstoff.report.model.Block> blocks = new ArrayList<>();
        model.blocks().forEach(block -> blocks.add((io.github.firstoff.report.model.Block) walk.copy(block)));
        walk.change.ifPresent(said::add);
        return model.with(blocks);
    }

    private Object copy(Object value) {
        if (value instanceof String text) {
            return text(text);
        }
        if (value instanceof Double number) {
            boolean here = Double.isFinite(number) && seen++ == wanted;
            if (here) {
                change = Optional.of("number " + number);
            }
            return here ? number + Math.max(Math.abs(number), 1e-3) * 0.02 : number;
        }
        if (value instanceof Optional<?> optional) {
            return optional.map(this::copy);
        }
        if (value instanceof List<?> list) {
            List<Object> copies = new ArrayList<>();
            list.forEach(each -> copies.add(copy(each)));
            return copies;
        }
        return value instanceof Record source && !isLayout(value) ? copyOf(source) : value;
    }

    /** Widths of columns, tones and pictures of a firm are no figures of a sheet. */
    private static boolean isLayout(Object value) {
        return value instanceof io.github.firstoff.report.model.Width
                || value instanceof io.github.firstoff.report.model.Logo
                || value instanceof io.github.firstoff.report.model.Block.Letterhead;
    }

    private String text(String text) {
        Matcher digit = DIGIT.matcher(text);
        if (!digit.find()) {
            return text;
        }
        if (seen++ != wanted) {
            return text;
        }
        // The last digit, where a slip is hardest to see.
        int place = digit.start();
        while (digit.find()) {
            place = digit.start();
        }
        char other = text.charAt(place) == '9' ? '8' : (char) (text.charAt(place) + 1);
        String changed = text.substring(0, place) + other + text.substring(place + 1);
        change = Optional.of(text + " -> " + changed);
        return changed;
    }

    private Object copyOf(Record source) {
        RecordComponent[] components = source.getClass().getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        Object[] values = new Object[components.length];
        boolean same = true;
        int before = seen;
        try {
            for (int i = 0; i < components.length; i++) {
                types[i] = components[i].getType();
                java.lang.reflect.Method accessor = components[i].getAccessor();
                accessor.setAccessible(true);
                Object value = accessor.invoke(source);
                values[i] = value == null ? null : copy(value);
                same &= java.util.Objects.equals(value, values[i]);
            }
            if (same) {
                return source;
            }
            Constructor<?> constructor = source.getClass().getDeclaredConstructor(types);
            constructor.setAccessible(true);
            return constructor.newInstance(values);
        } catch (InvocationTargetException refused) {
            // A picture that contradicts itself cannot be drawn, by a forger neither: this one is left as it was.
            change = Optional.empty();
            seen = Math.max(seen, before);
            return source;
        } catch (ReflectiveOperationException fault) {
            throw new LinkageError(fault.getMessage(), fault);
        }
    }
}
