package design

import (
	"fmt"
	"regexp"
	"strconv"

	"gopkg.in/yaml.v3"
)

// Price is what something costs; Item is the text of a purchase line.
type Price struct {
	Item     Text
	Each     float64
	Currency string
}

// moneyForm is an amount with an ISO 4217 currency code: "4.50 EUR".
var moneyForm = regexp.MustCompile(`^([0-9]{1,9}(?:\.[0-9]{1,4})?) ([A-Z]{3})$`)

// pricesKey reads what things cost, by the text of their purchase line.
func pricesKey() key[Design] {
	k := Key{Name: "prices", Kind: KindMoney,
		Doc:     "what one piece, pack or metre costs, by the wording of its item in the bill of materials",
		Example: `{"blade C 15 A, blue": 0.60 EUR}`}
	return key[Design]{Key: k, read: func(r *reader, d *Design, f field) {
		if n := follow(f.node); n.Kind != yaml.MappingNode {
			r.report(r.pos(f.node), fmt.Sprintf("%q is %s", k.Name, kindName(n)),
				"a mapping, such as "+k.Example)
			return
		}
		r.pairs(f.node, where{kind: k.Name}, fold, func(name, value *yaml.Node) {
			r.price(d, name, value)
		})
	}}
}

func (r *reader) price(d *Design, name, value *yaml.Node) {
	item, ok := r.sentence(field{where: where{kind: "an item of prices"}, node: name}, maxSentence)
	at := field{where: where{"price of", name.Value}, node: value}
	text, okPrice := r.sentence(at, maxName)
	if !ok || !okPrice {
		return
	}
	m := moneyForm.FindStringSubmatch(text.Value)
	if m == nil {
		r.report(text.Pos, fmt.Sprintf("%s: %s is not a price", at, quoted(text.Value)),
			"an amount and a currency code, such as 4.50 EUR")
		return
	}
	each, _ := strconv.ParseFloat(m[1], 64) // the form is checked
	d.Prices = append(d.Prices, &Price{Item: item, Each: each, Currency: m[2]})
}
