package io.github.firstoff.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.quantity.SourcedTable.Marked;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SourcedTableTest {
    private static final String WHOLE = """
            # source: a standard
            # edition: 2020
            # clause: table 1
            # units: mm
            # marks: r = read in the standard
            #   and one line more
            name; also; size
            one ; 1 | I; 2.50r
            two; ;3r
            """;

    private static SourcedTable read(String text) throws IOException {
        return SourcedTable.read("sizes.csv", new BufferedReader(new StringReader(text)), ';');
    }

    @Test
    void read_wholeTable_givesItsCellsWithoutSpaceAroundThem() throws IOException {
        SourcedTable table = read(WHOLE);
        assertThat(table.headings()).containsExactly("name", "also", "size");
        assertThat(table.rows()).containsExactly(List.of("one", "1 | I", "2.50r"), List.of("two", "", "3r"));
        assertThat(Marked.of("2.50r")).isEqualTo(new Marked(new BigDecimal("2.50"), 'r'));
    }

    @ParameterizedTest
    @ValueSource(strings = {"source", "edition", "clause", "units", "marks"})
    void read_withoutProvenance_refuses(String key) {
        assertThatThrownBy(() -> read(WHOLE.replace("# " + key + ":", "# ")))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("sizes.csv")
                .hasMessageContaining(key);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"two; ;3r | two;3r", "two; ;3r | two; ;3r;4r"})
    void read_rowOfAnotherLength_refuses(String from, String to) {
        assertThatThrownBy(() -> read(WHOLE.replace(from, to)))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("cells under 3 headings in \"two");
    }

    @Test
    void read_withoutRows_refuses() {
        assertThatThrownBy(() -> read(WHOLE.substring(0, WHOLE.indexOf("one ;"))))
                .hasMessageContaining("no rows");
        assertThatThrownBy(() -> SourcedTable.of(SourcedTableTest.class, "none.csv", ';'))
                .hasMessage("the table none.csv is missing from the program");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "2.5", "r", "2.5 r"})
    void marked_withoutFigureOrMark_refuses(String cell) {
        assertThatThrownBy(() -> Marked.of(cell)).isInstanceOf(NumberFormatException.class);
    }
}
