{# What one chart gives to a reader who explores it: values, contenders, words. Loaded when asked for. #}
exploring.charts.set({{ view.address | tojson }}, {
"chart": {{ view.chart | safe }},
"people": {{ view.people | safe }},
"says": {{ view.says | safe }}
});
