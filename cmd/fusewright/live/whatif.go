package live

// whatIfQuestions are those of the view; none are answered yet.
var whatIfQuestions []question
